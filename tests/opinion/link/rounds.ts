/** Rounds for tests of the link: the demo's, hard ones made by hand, and arbitrary ones. */
import fc from 'fast-check';
import type { Build } from '../../../src/build/build.ts';
import { buildFrom } from '../../../src/build/read/document.ts';
import { hasHidden } from '../../../src/finish/parse.ts';
import { drawFrom } from '../../../src/ground/draw.ts';
import { differingParts, type Round, roundOf } from '../../../src/opinion/round.ts';
import { randomBuild, ref } from '../../build/sample.ts';
import { anyFinishes } from '../../finish/arbitrary.ts';
import { demo, demoRound, roundWith } from '../reply/arbitrary.ts';

export { demo, demoRound };

const name = fc
  .oneof(
    fc.string({ unit: 'grapheme', minLength: 1, maxLength: 40 }),
    fc.constantFrom('<script>alert(1)</script>', '"],[', '\\u202e', '=1+1', 'عجلات'),
    fc.constantFrom(
      'الهيكل',
      '漢字の名前',
      '👩🏽‍🔧',
      'a'.repeat(120),
      'Body',
      'from a link',
      '__proto__',
    ),
  )
  .filter(
    (text) => !hasHidden(text) && /^[^\r\n\t]*\S[^\r\n\t]*$/.test(text) && text.length <= 120,
  );
const number = (min: number, max: number) =>
  fc.double({ min, max, noNaN: true }).map((value) => value + 0);

/** Builds with any finishes, names, parts missing and alternatives the schema allows. */
export const anyBuild: fc.Arbitrary<Build> = fc
  .record({
    seed: fc.nat(),
    name,
    partNames: fc.array(name, { minLength: 5, maxLength: 5 }),
    story: fc.option(fc.string({ unit: 'grapheme', maxLength: 300 }), { nil: undefined }),
    finishes: anyFinishes,
    scale: number(1, 200),
    distanceMm: number(50, 20_000),
    light: fc.constantFrom('D65', 'A', 'LED-B3', 'D50', 'FL11'),
    count: fc.integer({ min: 1, max: 30 }),
    absent: fc.option(fc.nat({ max: 4 }), { nil: undefined }),
  })
  .map(({ seed, name: title, partNames, story, finishes, count, absent, ...viewed }) => {
    const made = randomBuild(drawFrom(seed));
    const draw = drawFrom(seed + 1);
    const all = [...made.finishes, ...finishes.map((one) => ({ rack: 'any', ...one }))];
    const anyRef = (): string => {
      const one = all[draw.below(all.length)]!;
      return `${one.rack}/${one.id}`;
    };
    const parts = made.parts.map((part, at) => ({
      ...part,
      name: partNames[at] ?? part.name,
      ...('candidates' in part && { candidates: [...new Set([anyRef(), anyRef(), ref('red')])] }),
      absent: at === absent,
    }));
    const alternatives = Array.from({ length: count }, (_, at) => ({
      id: `idea-${at}`,
      name: `Idea ${at}`,
      choices: Object.fromEntries(
        parts.flatMap((part) =>
          'candidates' in part
            ? [[part.id, part.candidates[draw.below(part.candidates.length)]!]]
            : [],
        ),
      ),
    }));
    const { scale, distanceMm, light } = viewed;
    return buildFrom({
      ...made,
      name: title,
      ...(story !== undefined && !hasHidden(story) && { story }),
      scale,
      viewing: { distanceMm, light },
      finishes: all,
      parts,
      rules: [],
      alternatives,
    });
  });

/** Any round of any build: some of its alternatives, some of its parts asked. */
export const anyRound: fc.Arbitrary<Round> = fc
  .record({
    build: anyBuild,
    withStory: fc.boolean(),
    asks: fc.boolean(),
    withSpectra: fc.boolean(),
    withFinishNames: fc.boolean(),
    every: fc.integer({ min: 1, max: 3 }),
  })
  .map(({ build, asks, every, ...asking }) =>
    roundOf(build, {
      ...asking,
      parts: asks ? differingParts(build) : [],
      alternatives: build.alternatives.map(({ id }) => id).filter((_, at) => at % every === 0),
    }),
  );

/** The demo under a filament lamp keeps its spectrum. */
const lamplit = roundOf(
  { ...demo, viewing: { distanceMm: 300, light: 'A' } },
  { withStory: true, parts: differingParts(demo) },
);
/** Names that look like markup, like our own text, or run from right to left. */
const odd = roundWith(2, 3, ['<b>Body</b>', 'الهيكل', '漢字', '👩🏽‍🔧', '"],[']);
const oddlyNamed = roundOf(odd.build, { parts: odd.asks });
/** Rounds of every sort, for damaging. */
export const stock: readonly Round[] = [
  roundOf(demo),
  demoRound,
  lamplit,
  roundWith(26),
  oddlyNamed,
  ...fc.sample(anyRound, { numRuns: 40, seed: 20311126 }),
];
