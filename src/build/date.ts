/**
 * Which day is so many days after another? ISO 8601 calendar dates (`2031-05-24`) in, the same
 * out; counted in UTC so that no clock change shifts a day. The clock itself is never read:
 * today is always handed in. Years 0000–9999.
 */
const dayMs = 86_400_000;
const lastDay = Date.parse('9999-12-31T00:00:00Z');
const shape = /^\d{4}-\d{2}-\d{2}$/;

/** Whether the text is a day that the calendar has: 2031-02-29 is not. */
export function isRealDate(date: string): boolean {
  if (!shape.test(date)) return false;
  const parsed = new Date(`${date}T00:00:00Z`);
  // Engines roll 31 February over to March, so the day must survive the way there and back.
  return !Number.isNaN(parsed.getTime()) && parsed.toISOString().startsWith(date);
}

/** The day `days` whole days after `date`; parts of a day count as a whole one.
 * Throws `RangeError` where `date` is no calendar date; never passes 9999-12-31. */
export function addDays(date: string, days: number): string {
  const time = Math.min(timeOf(date) + Math.ceil(days) * dayMs, lastDay);
  return new Date(time).toISOString().slice(0, 10);
}

/** Days from `from` to `to`; negative where `to` comes first. */
export const daysBetween = (from: string, to: string): number =>
  Math.round((timeOf(to) - timeOf(from)) / dayMs);

function timeOf(date: string): number {
  if (!isRealDate(date)) throw new RangeError(`${date} is not a calendar date`);
  return Date.parse(`${date}T00:00:00Z`);
}
