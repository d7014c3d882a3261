/** The demo says what it was laid out to show: flags only, never numbers. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { parseBuild } from '../../src/build/file.ts';
import type { SightTable } from '../../src/car/table.ts';
import { compareAlternatives } from '../../src/score/sheet.ts';

const read = (path: string): string =>
  readFileSync(new URL(`../../${path}`, import.meta.url), 'utf8');
const build = parseBuild(read('src/build/demo.json'), 'demo.json');
const sight: SightTable = JSON.parse(read('models/roadster.sight.json'));
const { alternatives, closeness } = compareAlternatives(build, sight, { today: '2031-05-01' });
const [thread, slate, answer] = alternatives;
const kinds = (at: number): string[] =>
  alternatives[at]!.evidence.map(({ score, kind }) => `${score}/${kind}`);

describe('the demo build', () => {
  it('has three alternatives that keep every rule', () => {
    expect(alternatives).toHaveLength(3);
    for (const { broken } of alternatives) expect(broken).toEqual([]);
  });
  it('A has an accent that shows in one zone only', () => {
    expect(kinds(0)).toContain('accent/orphan');
  });
  it('B has skin finishes of nearly equal sheen, and a part that gets lost', () => {
    const nearMiss = slate!.evidence.filter(({ kind }) => kind === 'near-miss');
    expect(nearMiss.some(({ parts }) => parts.includes('body'))).toBe(true);
    const lost = slate!.evidence.filter(({ kind }) => kind === 'lost');
    expect(lost.some(({ parts }) => parts[0] === 'seat-piping')).toBe(true);
  });
  it('C ties its accent in, has no fault of sheen and loses nothing', () => {
    expect(kinds(2)).toContain('accent/echoed');
    expect(kinds(2)).not.toContain('sheen/near-miss');
    expect(kinds(2)).not.toContain('contrast/lost');
  });
  it('C leads, beyond what the stated colour uncertainty could turn round', () => {
    expect(answer!.overall).toBeGreaterThan(Math.max(thread!.overall, slate!.overall));
    for (const { a, aheadIn100 } of closeness.filter(({ a, b }) => [a, b].includes(answer!.id))) {
      expect(a).toBe(answer!.id);
      expect(aheadIn100).toBeGreaterThanOrEqual(90);
    }
  });
  it('every finish it embeds says the same as the rack it came from', () => {
    for (const rack of ['bench-drawer', 'corner-shop']) {
      const { finishes } = JSON.parse(read(`palettes/${rack}.json`)) as {
        finishes: { id: string; colour: object; gloss60: number }[];
      };
      const byId = new Map(finishes.map((finish) => [finish.id, finish]));
      for (const finish of build.finishes.filter((one) => one.rack === rack)) {
        expect(finish.gloss60, finish.id).toBe(byId.get(finish.id)!.gloss60);
        expect(finish.colour, finish.id).toMatchObject(byId.get(finish.id)!.colour);
      }
    }
  });
});
