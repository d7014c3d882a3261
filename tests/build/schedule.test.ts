/** Dates and waits. Derived: each case worked by hand beside it; calendar facts are Gregorian. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addDays, daysBetween, isRealDate } from '../../src/build/date.ts';
import { buildFrom } from '../../src/build/read/document.ts';
import { scheduleOf, strippingDays, type Waits } from '../../src/build/schedule.ts';
import { cureOf as cureTableOf } from '../../src/finish/cure.ts';
import type { Chemistry } from '../../src/finish/finish.ts';
import { plainDocument, plainFinish, ref } from './sample.ts';

describe('calendar dates', () => {
  it('know leap years by the century rule', () => {
    // Published: Gregorian calendar (ISO 8601): 2000 and 2032 are leap years, 2031 and 2100 not.
    const days = ['2000-02-29', '2032-02-29', '2031-02-29', '2100-02-29'];
    expect(days.map(isRealDate)).toEqual([true, true, false, false]);
  });

  it.each(['2031-13-01', '2031-04-31', '2031-00-10', '31-01-01', '2031-1-1', 'tomorrow', ''])(
    'refuse %s',
    (text) => expect(isRealDate(text)).toBe(false),
  );

  it('step over month and year ends, parts of a day counting whole', () => {
    expect(addDays('2031-12-30', 3)).toBe('2032-01-02');
    expect(addDays('2032-02-28', 1)).toBe('2032-02-29');
    expect(addDays('2031-05-24', 0.1)).toBe('2031-05-25');
    expect(addDays('9999-12-30', 400)).toBe('9999-12-31');
    expect(() => addDays('2031-02-30', 1)).toThrow(RangeError);
  });

  it('count back what they added', () => {
    const days = fc.integer({ min: -20_000, max: 20_000 });
    fc.assert(
      fc.property(
        days,
        (count) => daysBetween('2031-05-24', addDays('2031-05-24', count)) === count,
      ),
      { seed: 2031 },
    );
  });
});

/** Round waits, so that a day's sum can be done in the head. */
const waits: Record<Chemistry, Waits> = {
  lacquer: { handleHours: [12, 24], cureDays: [7, 10] },
  acrylic: { handleHours: [24, 48], cureDays: [2, 4] },
  enamel: { handleHours: [48, 96], cureDays: [10, 30] },
  urethane: { handleHours: [24, 24], cureDays: [3, 5] },
  none: { handleHours: [0, 0], cureDays: [0, 0] },
};
const cureOf = (chemistry: Chemistry): Waits => waits[chemistry];

const film = { effect: 'solid', colour: { lab: [60, 0, 0] } };
const primer = { ...film, name: 'Primer', role: 'primer', chemistry: 'acrylic' };
const late = {
  name: 'Clear',
  chemistry: 'urethane',
  bottle: { id: 'clear', name: 'Clear', onHand: false, leadDays: 14 },
};
const build = buildFrom({
  ...plainDocument([], [], { body: 'red', stripes: ['red', 'cloth'], seats: ['sand', 'teal'] }, [
    'body',
  ]),
  finishes: [
    plainFinish('red', ['red'], { undercoats: [primer] }),
    plainFinish('sand', [], { chemistry: 'enamel' }),
    plainFinish('teal', [], { clear: late }),
    plainFinish('cloth', [], { effect: 'ribbon', chemistry: 'none' }),
  ],
});
const planned = (wears: Record<string, string>) =>
  scheduleOf(
    build,
    new Map(Object.entries(wears).map(([part, finish]) => [part, ref(finish)])),
    '2031-05-01',
    cureOf,
  );

describe('the day it could be finished', () => {
  it('is today where everything is painted', () => {
    const { waits: none, earliest, latest } = planned({ body: 'red' });
    expect([none, earliest, latest]).toEqual([[], '2031-05-01', '2031-05-01']);
  });

  it('adds primer, colour and cure, the colour waiting for its bottle', () => {
    // Primer handled after 1–2 days; the red bottle is here on day 3; cured 7–10 days later.
    const { waits: found, earliest, latest } = planned({ stripes: 'red' });
    expect(found).toEqual([
      {
        finish: ref('red'),
        parts: ['stripes'],
        isStripped: false,
        films: 2,
        leadDays: 3,
        days: [10, 13],
      },
    ]);
    expect([earliest, latest]).toEqual(['2031-05-11', '2031-05-14']);
  });

  it('waits for a clear that arrives long after the colour is dry', () => {
    // Colour handled after half a day to a day; clear here on day 14, cured 3–5 days later.
    expect(planned({ seats: 'teal' }).waits[0]).toMatchObject({ days: [17, 19], leadDays: 14 });
  });

  it('is set by the slowest of finishes that dry side by side', () => {
    const { waits: found, earliest, latest } = planned({ stripes: 'red', seats: 'sand' });
    // Ties at 10 days at best; enamel at 30 days at worst comes first.
    expect(found.map(({ finish }) => finish)).toEqual([ref('sand'), ref('red')]);
    expect([earliest, latest]).toEqual(['2031-05-11', '2031-05-31']);
  });

  it('adds stripping where a painted part changes', () => {
    const [wait] = planned({ body: 'sand' }).waits;
    expect(wait).toMatchObject({
      isStripped: true,
      days: [10 + strippingDays, 30 + strippingDays],
    });
  });

  it('takes the waits of the cure table where none are given', () => {
    const worn = new Map([['seats', ref('sand')]]);
    const [low, high] = cureTableOf('enamel').cureDays;
    expect(scheduleOf(build, worn, '2031-05-01').waits[0]!.days).toEqual([low, high]);
  });

  it('costs no days for a material that is only fitted', () => {
    expect(planned({ stripes: 'cloth' }).earliest).toBe('2031-05-01');
  });
});
