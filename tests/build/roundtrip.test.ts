/** Whatever can be built can be saved and opened again unchanged (property, fixed seeds). */
import fc from 'fast-check';
import * as v from 'valibot';
import { describe, expect, it } from 'vitest';
import { type Build, buildSchema } from '../../src/build/build.ts';
import { contradictions } from '../../src/build/choice/contradiction.ts';
import { parseBuild, textOf } from '../../src/build/file.ts';
import { buildFrom } from '../../src/build/read/document.ts';
import { drawFrom } from '../../src/ground/draw.ts';
import { randomBuild } from './sample.ts';

const harmless = (text: string): boolean =>
  !/[\p{Cc}\p{Cs}\u061c\u200e\u200f\u2028\u2029\u202a-\u202e\u2066-\u2069\ufeff]/u.test(text);
const words = (longest: number) =>
  fc
    .string({ unit: 'grapheme', minLength: 1, maxLength: 20 })
    .filter((text) => harmless(text) && text.trim() !== '' && text.length <= longest);
/** JSON has no negative zero; adding 0 makes it plain. */
const number = (min: number, max: number) =>
  fc.double({ min, max, noNaN: true }).map((value) => value + 0);

/** A random build with random names, notes, colours and numbers poured in. */
const builds: fc.Arbitrary<Build> = fc
  .record({
    seed: fc.nat(),
    name: words(120),
    story: fc.option(words(2000), { nil: undefined }),
    lab: fc.tuple(number(0, 100), number(-160, 160), number(-160, 160)),
    gloss60: number(0, 100),
    scale: number(1, 200),
    distanceMm: number(50, 20_000),
    light: fc.constantFrom('D65', 'A'),
    tonal: fc.boolean(),
    weight: number(0, 1000),
  })
  .map(({ seed, name, story, lab, gloss60, scale, distanceMm, light, tonal, weight }) => {
    const made = randomBuild(drawFrom(seed));
    return buildFrom({
      ...made,
      name,
      ...(story === undefined ? {} : { story }),
      scale,
      tonal,
      viewing: { distanceMm, light },
      weights: { ...made.weights, accent: weight },
      finishes: made.finishes.map((finish) => ({ ...finish, gloss60, name, colour: { lab } })),
    });
  });

describe('a build', () => {
  it('comes back from its text exactly as it was', () => {
    fc.assert(
      fc.property(builds, (build) => {
        expect(buildFrom(JSON.parse(textOf(build)))).toEqual(build);
        // Files from outside are also asked whether their rules can hold.
        if (contradictions(build).kind === 'can-hold') {
          expect(parseBuild(textOf(build))).toEqual(build);
        }
      }),
      { seed: 20310524, numRuns: 200 },
    );
  });

  it('is written the same way twice', () => {
    fc.assert(
      fc.property(
        builds,
        (build) => textOf(buildFrom(JSON.parse(textOf(build)))) === textOf(build),
      ),
      { seed: 7, numRuns: 50 },
    );
  });

  it('keeps to the published schema', () => {
    fc.assert(
      fc.property(builds, (build) => v.is(buildSchema, build)),
      { seed: 8, numRuns: 50 },
    );
  });
});

describe('spoiled text', () => {
  it('is either opened or refused with problems, never with anything else', () => {
    // One character of a good file replaced, removed or doubled.
    const text = textOf(randomBuild(drawFrom(11)));
    const edits = fc.record({
      at: fc.nat({ max: text.length - 1 }),
      take: fc.nat({ max: 2 }),
      put: fc.constantFrom('', '"', '{', ',', '0', '-', 'e', '\u202e', 'null', '[]'),
    });
    fc.assert(
      fc.property(edits, ({ at, take, put }) => {
        const edited = text.slice(0, at) + put + text.slice(at + take);
        try {
          parseBuild(edited);
        } catch (error) {
          expect(error).toHaveProperty('name', 'InputError');
        }
      }),
      { seed: 20310524, numRuns: 500 },
    );
  });
});
