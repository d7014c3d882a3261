/**
 * What did the builder type? Numbers and colour codes as hands write them, to values that the
 * finish schema takes, or to what is wrong and how to mend it.
 *
 * In: text of one field. Out: the value, undefined for an empty field that may be empty, or a fault
 * in one sentence. A decimal comma is read as a point; a hex code may lack its # or be of three
 * digits (CSS).
 */
export type Typed<Value> =
  | { readonly value: Value; readonly fault?: never }
  | { readonly fault: string; readonly value?: never };

export interface Span {
  readonly low: number;
  readonly high: number;
  /** Whole numbers only. */
  readonly isWhole?: boolean;
  /** What stands behind the figure in words: `GU`, `days`. */
  readonly unit?: string;
}

const numeral = /^[+\-−]?(?:\d+(?:[.,]\d*)?|[.,]\d+)$/;

/** A number within the span, both ends included. */
export function numberTyped(text: string, span: Span): Typed<number> {
  const { low, high, isWhole = false, unit } = span;
  const wanted = `${isWhole ? 'a whole number' : 'a number'} from ${low} to ${high}${unit === undefined ? '' : ` ${unit}`}`;
  const plain = text.trim();
  if (plain === '') return { fault: `nothing stands here; write ${wanted}.` };
  if (!numeral.test(plain)) return { fault: `this is no number; write ${wanted}.` };
  const value = Number(plain.replace('−', '-').replace(',', '.'));
  if (value < low) return { fault: `${plain} is too low; write ${wanted}.` };
  if (value > high) return { fault: `${plain} is too high; write ${wanted}.` };
  if (isWhole && !Number.isInteger(value))
    return { fault: `${plain} is not whole; write ${wanted}.` };
  return { value };
}

/** As `numberTyped`, where an empty field means that nothing is said. */
export const perhapsNumberTyped = (text: string, span: Span): Typed<number | undefined> =>
  text.trim() === '' ? { value: undefined } : numberTyped(text, span);

/** A colour code as `#rrggbb` in lower case. */
export function hexTyped(text: string): Typed<string> {
  const digits = /^#?([0-9a-f]{6}|[0-9a-f]{3})$/i.exec(text.trim())?.[1]?.toLowerCase();
  if (digits === undefined) {
    return { fault: 'write # and six digits from 0–9 and a–f, such as #b3402a.' };
  }
  const six = digits.length === 6 ? digits : [...digits].map((digit) => digit + digit).join('');
  return { value: `#${six}` };
}
