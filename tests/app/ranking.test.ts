/**
 * What a ranking is asked about, and how a combination becomes an alternative. Counts are derived
 * from the demo: seven open parts of three candidates each; numbers are held against the score
 * sheet of the untouched build (oracle).
 */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import {
  canWear,
  placesBySign,
  signOfChoices,
  withCombination,
} from '../../src/app/ranking/put.ts';
import { combinationsOf, isSameQuestion, type Question } from '../../src/app/ranking/question.ts';
import { type Build, isOpen } from '../../src/build/build.ts';
import { mostAlternatives } from '../../src/build/edit/alternative.ts';
import { parseBuild, textOf } from '../../src/build/file.ts';
import type { SightTable } from '../../src/car/table.ts';
import { heldIn, partsWithChoice, withHeld } from '../../src/ranking/held.ts';
import { rankBuild } from '../../src/ranking/rank.ts';
import { compareAlternatives } from '../../src/score/sheet.ts';

const demo = parseBuild(
  readFileSync(new URL('../../src/build/demo.json', import.meta.url), 'utf8'),
);
const sight = JSON.parse(
  readFileSync(new URL('../../models/roadster.sight.json', import.meta.url), 'utf8'),
) as SightTable;
const today = '2031-04-01';
const open = partsWithChoice(demo);
const lastOfEach = Object.fromEntries(open.map(({ id, candidates }) => [id, candidates.at(-1)!]));
const question = (build: Build): Question => ({
  build,
  sight,
  wanted: { today, count: 10, isDifferent: false },
  held: {},
});

describe('what a ranking is asked about', () => {
  it('takes in parts that are open, on the model and have something to choose from', () => {
    expect(open.map(({ id }) => id)).toEqual(demo.parts.filter(isOpen).map(({ id }) => id));
    const [first, second] = open;
    const fewer: Build = {
      ...demo,
      parts: demo.parts.map((part) =>
        part.id === first!.id
          ? { ...part, absent: true }
          : part.id === second!.id
            ? { ...part, candidates: second!.candidates.slice(0, 1) }
            : part,
      ),
    };
    expect(partsWithChoice(fewer)).toHaveLength(5);
    expect(combinationsOf(demo, {})).toBe(3n ** 7n);
    expect(combinationsOf(fewer, {})).toBe(3n ** 5n);
  });

  it('stays the same whatever alternatives wear and are called, and changes with what counts', () => {
    const asked = question(demo);
    expect(isSameQuestion(asked, question({ ...demo, name: 'Another', alternatives: [] }))).toBe(
      true,
    );
    const others: Partial<Build>[] = [
      { weights: { ...demo.weights, sheen: 0 } },
      { rules: demo.rules.slice(1) },
      { viewing: { ...demo.viewing, distanceMm: 1000 } },
      { parts: [...demo.parts] },
      { tonal: true, mustRead: demo.mustRead },
    ];
    for (const other of others) {
      expect(isSameQuestion(asked, question({ ...demo, ...other }))).toBe(false);
    }
    expect(isSameQuestion(asked, { ...asked, held: { mirrors: lastOfEach.mirrors! } })).toBe(false);
    // Held at what is no candidate is not held.
    expect(isSameQuestion(asked, { ...asked, held: { mirrors: 'no/such' } })).toBe(true);
  });

  it('holds a part at one finish without changing a single number', () => {
    const held = { mirrors: lastOfEach.mirrors!, wheels: lastOfEach.wheels! };
    const build = withHeld(demo, held);
    expect(heldIn(demo, held)).toEqual(held);
    expect(combinationsOf(demo, held)).toBe(3n ** 5n);
    expect(partsWithChoice(build).map(({ id }) => id)).not.toContain('mirrors');
    const worn = { id: 'worn', name: 'Worn', choices: lastOfEach };
    const overallIn = (one: Build): number | undefined =>
      compareAlternatives({ ...one, alternatives: [...one.alternatives, worn] }, sight, {
        today,
        withoutCloseness: true,
      }).alternatives.find(({ id }) => id === 'worn')?.overall;
    expect(overallIn(build)).toBeCloseTo(overallIn(demo)!, 9);
  });
});

describe('a ranking with a part held', () => {
  it('is the whole ranking without the rows in which the part wears something else', () => {
    const wanted = { today, count: 1000, isDifferent: false };
    const whole = rankBuild(demo, sight, wanted).rows;
    const mirrors = lastOfEach.mirrors!;
    const held = rankBuild(withHeld(demo, { mirrors }), sight, wanted).rows;
    const among = whole.filter(({ choices }) => choices.mirrors === mirrors);
    expect(among.length).toBeGreaterThan(10);
    expect(among.length).toBeLessThan(whole.length);
    expect(held).toHaveLength(among.length);
    held.forEach(({ sheet }, at) => {
      expect(sheet.overall).toBeCloseTo(among[at]!.sheet.overall, 9);
    });
  });
});

describe('a combination put on the stage', () => {
  it('is an alternative of its own that wears just that', () => {
    const added = withCombination(demo, lastOfEach);
    expect(added.alternatives).toHaveLength(demo.alternatives.length + 1);
    expect(added.alternatives.at(-1)?.choices).toEqual(lastOfEach);
    expect(parseBuild(textOf(added)).alternatives.at(-1)?.choices).toEqual(lastOfEach);
  });

  it('is known again, by whichever alternative wears it first', () => {
    const sign = signOfChoices(demo, lastOfEach);
    expect(placesBySign(demo).get(sign)).toBeUndefined();
    const twice = withCombination(withCombination(demo, lastOfEach), lastOfEach);
    expect(placesBySign(twice).get(sign)).toBe(demo.alternatives.length);
    demo.alternatives.forEach(({ choices }, at) => {
      expect(placesBySign(demo).get(signOfChoices(demo, choices))).toBe(at);
    });
  });

  it('changes nothing where a build is full, and is refused where the build no longer allows it', () => {
    let full = demo;
    while (full.alternatives.length < mostAlternatives) full = withCombination(full, lastOfEach);
    expect(withCombination(full, lastOfEach)).toBe(full);
    expect(canWear(demo, lastOfEach)).toBe(true);
    expect(canWear(demo, { ...lastOfEach, mirrors: 'no/such' })).toBe(false);
    expect(canWear(demo, { body: 'corner-shop/dragonfly' })).toBe(false);
  });
});
