/** Bottles to buy, counted as a shelf counts them. Derived: each case counted by hand. */
import { describe, expect, it } from 'vitest';
import { bottlesToBuy, longestLeadDays, shelfOf } from '../../src/build/bottles.ts';
import { buildFrom } from '../../src/build/read/document.ts';
import { plainDocument, plainFinish, ref, sketched } from './sample.ts';

const primer = (onHand: boolean, leadDays = 9) => ({
  name: 'Primer',
  role: 'primer',
  effect: 'solid',
  colour: { lab: [60, 0, 0] },
  chemistry: 'lacquer',
  bottle: { id: 'primer', name: 'Primer', onHand, leadDays },
});
const clear = (onHand: boolean) => ({
  name: 'Clear',
  chemistry: 'lacquer',
  bottle: { id: 'clear', name: 'Clear', onHand, leadDays: 2 },
});
const worn = (finishes: Record<string, string>) =>
  new Map(Object.entries(finishes).map(([part, finish]) => [part, ref(finish)]));

describe('bottles to buy', () => {
  const document = plainDocument(
    [],
    [],
    { body: ['red', 'teal'], stripes: ['red', 'teal'], seats: 'teal', tub: 'red' },
    ['tub'],
  );
  const build = buildFrom({
    ...document,
    finishes: [
      plainFinish('red', ['red'], { undercoats: [primer(false)], clear: clear(false) }),
      plainFinish('teal', ['teal'], { undercoats: [primer(false)] }),
    ],
  });

  it('count a shared primer once, over every finish and part that wants it', () => {
    const toBuy = bottlesToBuy(build, worn({ body: 'red', stripes: 'teal', seats: 'teal' }));
    expect(toBuy.map(({ bottle, parts }) => [bottle.id, parts])).toEqual([
      ['primer', ['body', 'stripes', 'seats']],
      ['red', ['body']],
      ['clear', ['body']],
      ['teal', ['stripes', 'seats']],
    ]);
    expect(longestLeadDays(toBuy)).toBe(9);
  });

  it('leave out what only a painted part wears', () => {
    expect(bottlesToBuy(build, worn({ tub: 'red' }))).toEqual([]);
    expect(longestLeadDays([])).toBe(0);
  });

  it('come back when a painted part changes its finish', () => {
    const toBuy = bottlesToBuy(build, worn({ tub: 'teal' }));
    expect(toBuy.map(({ bottle }) => bottle.id)).toEqual(['primer', 'teal']);
  });

  it('leave out what is on hand', () => {
    const stocked = sketched({ parts: { body: 'red', stripes: ['teal'] }, toBuy: ['teal'] });
    const toBuy = bottlesToBuy(stocked, worn({ body: 'red', stripes: 'teal' }));
    expect(toBuy.map(({ bottle }) => bottle.id)).toEqual(['teal']);
  });

  it('take a bottle as on hand where any finish says so, and its longest lead time', () => {
    const disagreeing = buildFrom({
      ...plainDocument([], [], { body: 'red', seats: 'teal' }),
      finishes: [
        plainFinish('red', [], { undercoats: [primer(true, 2)] }),
        plainFinish('teal', [], { undercoats: [primer(false, 9)] }),
      ],
    });
    expect(shelfOf(disagreeing).get('primer')).toMatchObject({ onHand: true, leadDays: 9 });
    expect(bottlesToBuy(disagreeing, worn({ body: 'red', seats: 'teal' }))).toEqual([]);
  });
});
