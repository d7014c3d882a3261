/** Something that is on or off, in the looks of a choice. */
interface ToggleProps {
  readonly name: string;
  readonly title: string;
  readonly isOn: boolean;
  readonly onChange: (isOn: boolean) => void;
}

/** A button that stays down. */
export const Toggle = ({ name, title, isOn, onChange }: ToggleProps) => (
  <button
    type="button"
    className="toggle"
    aria-pressed={isOn}
    title={title}
    onClick={() => onChange(!isOn)}
  >
    {name}
  </button>
);
