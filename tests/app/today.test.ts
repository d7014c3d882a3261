/** Days as the builder's calendar has them. Expected times are derived by hand from the clock. */
import { describe, expect, it } from 'vitest';
import { todayHere, untilTomorrow } from '../../src/app/sheet/today.ts';

describe('today', () => {
  it('is the day on the builder’s wall, not the one in Greenwich', () => {
    expect(todayHere(new Date(2031, 2, 1, 0, 0, 1))).toBe('2031-03-01');
    expect(todayHere(new Date(2031, 11, 31, 23, 59, 59))).toBe('2031-12-31');
  });

  it('ends at midnight, over the end of a year too', () => {
    // One minute to go, and half a second more so that the day has surely begun.
    expect(untilTomorrow(new Date(2031, 11, 31, 23, 59, 0))).toBe(60_500);
    expect(untilTomorrow(new Date(2031, 2, 1, 12, 0, 0))).toBe(12 * 3_600_000 + 500);
  });
});
