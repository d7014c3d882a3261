/**
 * How is a document written so that a builder can read it and two versions compare line by line?
 * JSON with fields in a stated order, two spaces of indent, and anything that fits on one line
 * kept on one line. The same value gives the same text, however its fields were added.
 */
const widest = 100;

/** `value` as JSON text with a closing line break; unlisted fields follow `order` as they stand. */
export function jsonText(value: unknown, order: readonly string[]): string {
  const rank = new Map(order.map((field, position) => [field, position]));
  return `${laidOut(value, '', 0, rank)}\n`;
}

/** Text of one value; `lead` characters stand before it on its line already. */
function laidOut(value: unknown, indent: string, lead: number, rank: Map<string, number>): string {
  const short = oneLine(value, rank);
  if (indent.length + lead + short.length < widest || typeof value !== 'object' || value === null) {
    return short;
  }
  const inner = `${indent}  `;
  if (Array.isArray(value)) {
    const entries = value.map((entry) => inner + laidOut(entry, inner, 0, rank));
    return `[\n${entries.join(',\n')}\n${indent}]`;
  }
  const fields = fieldsOf(value, rank).map(([field, entry]) => {
    const label = `${JSON.stringify(field)}: `;
    return inner + label + laidOut(entry, inner, label.length, rank);
  });
  return `{\n${fields.join(',\n')}\n${indent}}`;
}

function oneLine(value: unknown, rank: Map<string, number>): string {
  if (typeof value !== 'object' || value === null) return JSON.stringify(value);
  if (Array.isArray(value)) return `[${value.map((entry) => oneLine(entry, rank)).join(', ')}]`;
  const fields = fieldsOf(value, rank).map(
    ([field, entry]) => `${JSON.stringify(field)}: ${oneLine(entry, rank)}`,
  );
  return fields.length === 0 ? '{}' : `{ ${fields.join(', ')} }`;
}

const fieldsOf = (value: object, rank: Map<string, number>): [string, unknown][] => {
  const last = rank.size;
  return Object.entries(value)
    .filter(([, entry]) => entry !== undefined)
    .sort(([a], [b]) => (rank.get(a) ?? last) - (rank.get(b) ?? last));
};
