/** Finishes come into a build, change in it and leave it. Derived: each by hand. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { shelfOf } from '../../../src/build/bottles.ts';
import { type Build, refOf } from '../../../src/build/build.ts';
import {
  embed,
  replaceFinish,
  usedRefs,
  withBottlesRetold,
  withoutUnused,
} from '../../../src/build/edit/finish.ts';
import { buildFrom } from '../../../src/build/read/document.ts';
import { drawFrom } from '../../../src/ground/draw.ts';
import { randomBuild, ref, sketched } from '../sample.ts';

const build = sketched({
  finishes: ['red', 'teal', 'sand', 'slate', 'lime'],
  parts: { stripes: ['red', 'teal'], body: 'sand' },
  rules: [
    {
      kind: 'if-then',
      when: { part: 'stripes', finish: ref('red') },
      wants: { part: 'body', oneOf: [ref('slate'), ref('sand')] },
    },
  ],
});
const refsOf = ({ finishes }: Build): string[] => finishes.map(refOf);
const sound = (one: Build): Build => {
  expect(buildFrom(structuredClone(one))).toEqual(one);
  return one;
};

describe('leaving out what is unused', () => {
  it('keeps what a part, an alternative or a rule names', () => {
    expect([...usedRefs(build)].sort()).toEqual(['red', 'sand', 'slate', 'teal'].map(ref));
    expect(refsOf(sound(withoutUnused(build)))).toEqual(['red', 'teal', 'sand', 'slate'].map(ref));
  });
});

describe('taking a finish in', () => {
  const [red] = build.finishes;

  it('does so once', () => {
    const more = sound(embed(build, { ...red!, rack: 'drawer' }));
    expect(refsOf(more).at(-1)).toBe('drawer/red');
    expect(embed(more, { ...red!, rack: 'drawer' })).toBe(more);
  });

  // derived: of one bottle told on hand or not, by the build and by what comes in, four cases.
  it.each([
    [true, true, true],
    [true, false, true],
    [false, true, true],
    [false, false, false],
  ])(
    'with a bottle on hand here (%s) or there (%s) has it on hand everywhere: %s',
    (here, there, both) => {
      const stocked = sketched({
        finishes: ['red', 'teal'],
        parts: { stripes: ['red', 'teal'] },
        toBuy: here ? [] : ['teal'],
      });
      const teal = stocked.finishes.find((one) => refOf(one) === ref('teal'))!.bottle!;
      const bottle = { ...teal, onHand: there };
      const more = sound(embed(stocked, { ...red!, rack: 'drawer', bottle }));
      const told = more.finishes.flatMap((one) => (one.bottle?.id === teal.id ? [one.bottle] : []));
      expect(told.map(({ onHand }) => onHand)).toEqual([both, both]);
      expect(shelfOf(more).get('teal')!.onHand).toBe(both);
    },
  );

  it('says nothing new of any bottle: the shelf is as it would be with both told (property)', () => {
    fc.assert(
      fc.property(fc.nat(), fc.boolean(), (seed, onHand) => {
        const some = randomBuild(drawFrom(seed));
        const [one] = some.finishes;
        const bottle = one?.bottle && { ...one.bottle, onHand };
        const incoming = { ...one!, rack: 'elsewhere', ...(bottle && { bottle }) };
        const before = shelfOf(some);
        const after = shelfOf(embed(some, incoming));
        for (const [id, held] of before) {
          expect(after.get(id)!.onHand).toBe(held.onHand || (id === bottle?.id && onHand));
        }
      }),
      { seed: 20311126, numRuns: 200 },
    );
  });
});

describe('a finish changed in its rack', () => {
  const stored = build.finishes.find((one) => refOf(one) === ref('teal'))!;
  const saying = (onHand: boolean) => ({ ...stored, bottle: { ...stored.bottle!, onHand } });

  it('that says otherwise of its bottle than before is believed, both ways', () => {
    for (const was of [true, false]) {
      const start = replaceFinish(build, ref('teal'), saying(was));
      expect(shelfOf(start).get('teal')!.onHand).toBe(was);
      const next = sound(replaceFinish(start, ref('teal'), saying(!was)));
      expect(shelfOf(next).get('teal')!.onHand).toBe(!was);
    }
  });

  it('leaves alone what others have on hand when it comes from a new bottle', () => {
    const red = build.finishes.find((one) => refOf(one) === ref('red'))!;
    const moved = { ...red, bottle: { ...stored.bottle!, onHand: false } };
    const next = sound(replaceFinish(build, ref('red'), moved));
    expect(
      next.finishes.filter((one) => one.bottle?.id === 'teal').map((one) => one.bottle!.onHand),
    ).toEqual([true, true]);
  });

  it('is told of a bottle by name, and only of what is said of it', () => {
    const gone = withBottlesRetold(build, new Map([['teal', { onHand: false }]]));
    expect(shelfOf(gone).get('teal')).toEqual({ ...stored.bottle!, onHand: false });
    expect(withBottlesRetold(build, new Map([['nothing', { onHand: false }]]))).toBe(build);
  });
});

describe('putting another in the place of one', () => {
  it('lets parts, alternatives and rules follow', () => {
    const other = { ...build.finishes[0]!, rack: 'drawer', id: 'brick' };
    const swapped = sound(replaceFinish(build, ref('red'), other));
    expect(swapped.parts[0]).toMatchObject({ candidates: ['drawer/brick', ref('teal')] });
    expect(swapped.alternatives[0]!.choices).toEqual({ stripes: 'drawer/brick' });
    expect(swapped.rules[0]).toMatchObject({ when: { finish: 'drawer/brick' } });
    expect(refsOf(swapped)).not.toContain(ref('red'));
  });

  it('that is not there changes nothing', () => {
    expect(replaceFinish(build, 'shelf/none', build.finishes[0]!)).toBe(build);
  });
});
