/** A small neutral bar for a number 0–100 that stands beside it in figures. */
export const Bar = ({ value }: { value: number }) => (
  <span className="bar" aria-hidden="true">
    <span className="bar-fill" style={{ inlineSize: `${Math.max(1, Math.min(100, value))}%` }} />
  </span>
);
