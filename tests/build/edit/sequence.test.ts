/**
 * However parts, alternatives, rules and finishes are edited one after the other, what is left is a
 * build that a file may hold and that comes back from its text as it was (property, fixed seed).
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Build, isOpen, type Rule, refOf } from '../../../src/build/build.ts';
import {
  addAlternative,
  alternativePerCandidate,
  alternativePerShared,
  copyAlternative,
  moveAlternative,
  noteAlternative,
  removeAlternative,
  renameAlternative,
} from '../../../src/build/edit/alternative.ts';
import { addPart, joinParts, splitPart } from '../../../src/build/edit/cover.ts';
import { embed, replaceFinish, withoutUnused } from '../../../src/build/edit/finish.ts';
import { withNamesFollowing } from '../../../src/build/edit/naming.ts';
import {
  giveFinish,
  openPart,
  renamePart,
  setAbsent,
  setCandidate,
  settlePart,
  wearOn,
} from '../../../src/build/edit/part.ts';
import { addRule, removeRule, replaceRule } from '../../../src/build/edit/rule.ts';
import { textOf } from '../../../src/build/file.ts';
import { fittedBuild } from '../../../src/build/fitted.ts';
import { buildFrom } from '../../../src/build/read/document.ts';
import { drawFrom } from '../../../src/ground/draw.ts';
import { randomBuild } from '../sample.ts';

/** What one edit is made with; numbers pick among whatever the build has at that moment. */
interface Hand {
  readonly one: number;
  readonly other: number;
  readonly isOn: boolean;
  readonly word: string;
}

/** Names that a file may hold, up to its 120 UTF-16 units, of characters that are easily broken. */
const fitting = (text: string): string => text.slice(0, 120);
const family = '\u{1f469}\u200d\u{1f469}\u200d\u{1f467}';
const words = [
  ...['Loud', 'Quiet', 'Copy of Loud', 'Größe', '箱', 'constructor', 'stripes'],
  `a${'\u{1f3ce}'.repeat(59)}`,
  '\u{1f3ce}'.repeat(60),
  fitting(`${family.repeat(15)}`),
  fitting(`o${'\u0308'.repeat(200)}`),
  fitting('e\u0301'.repeat(60)),
  '\u{1f1eb}\u{1f1ee}'.repeat(30),
  'x'.repeat(120),
  `${'y'.repeat(118)} 2`,
];
const hands: fc.Arbitrary<Hand> = fc.record({
  one: fc.nat(40),
  other: fc.nat(40),
  isOn: fc.boolean(),
  word: fc.constantFrom(...words),
});
const among = <Entry>(list: readonly Entry[], at: number): Entry | undefined =>
  list[at % Math.max(1, list.length)];
const partAt = (build: Build, at: number): string => among(build.parts, at)!.id;
const refAt = (build: Build, at: number): string => refOf(among(build.finishes, at)!);
const alternativeAt = (build: Build, at: number): string => among(build.alternatives, at)?.id ?? '';

const ruleFrom = (build: Build, { one, other, isOn }: Hand): Rule => {
  const [part, next] = [partAt(build, one), partAt(build, other)];
  const finish = refAt(build, other);
  if (part === next)
    return isOn ? { kind: 'must-echo', part } : { kind: 'most-finishes', count: 4 };
  return isOn
    ? { kind: 'same', parts: [part, next] }
    : { kind: 'if-then', when: { part, finish }, wants: { part: next, oneOf: [finish] } };
};

/** Half written while the part or the finish it names went from the build. */
const staleRule = (build: Build, hand: Hand): Rule => {
  const [part, gone] = [partAt(build, hand.one), `gone-${hand.other}`];
  const finish = refAt(build, hand.one);
  const rules: readonly Rule[] = [
    { kind: 'same', parts: hand.isOn ? [part, gone] : [gone, part] },
    { kind: 'must-echo', part: gone },
    { kind: 'most-share', part: gone, percent: 5 },
    { kind: 'ready-by', date: '2031-02-30' },
    { kind: 'if-then', when: { part, finish: `gone/${gone}` }, wants: { part, oneOf: [finish] } },
    { kind: 'if-then', when: { part, finish }, wants: { part, oneOf: [finish, `gone/${gone}`] } },
    {
      kind: 'never-together',
      first: { part, finish },
      second: { part: gone, finish },
    },
  ];
  return among(rules, hand.other)!;
};

const edits: Readonly<Record<string, (build: Build, hand: Hand) => Build>> = {
  settle: (build, { one, other, isOn }) =>
    settlePart(build, partAt(build, one), isOn, isOn ? refAt(build, other) : undefined),
  open: (build, { one }) => openPart(build, partAt(build, one)),
  candidate: (build, { one, other, isOn }) =>
    setCandidate(build, partAt(build, one), refAt(build, other), isOn),
  give: (build, { one, other }) => giveFinish(build, partAt(build, one), refAt(build, other)),
  wear: (build, { one, other }) =>
    wearOn(build, alternativeAt(build, other), partAt(build, one), refAt(build, one + other)),
  absent: (build, { one, isOn }) => setAbsent(build, partAt(build, one), isOn),
  rename: (build, { one, word }) => renamePart(build, partAt(build, one), word),
  join: (build, { one, other }) => joinParts(build, [partAt(build, one), partAt(build, other)]),
  split: (build, { one, word }) => splitPart(build, partAt(build, one), (id) => `${word} ${id}`),
  describe: (build, { one, word }) =>
    build.parts.some(({ covers }) => covers.includes(`more-${one}`))
      ? build
      : addPart(build, word, [`more-${one}`], refAt(build, one)),
  add: (build, { one, isOn, word }) =>
    addAlternative(build, word, isOn ? alternativeAt(build, one) : undefined),
  twins: (build, { word }) => addAlternative(addAlternative(build, word), word),
  spread: (build, { one }) => alternativePerCandidate(build, partAt(build, one)),
  share: (build) => alternativePerShared(build),
  copy: (build, { one }) => copyAlternative(build, alternativeAt(build, one)),
  name: (build, { one, word }) => renameAlternative(build, alternativeAt(build, one), word),
  note: (build, { one, word, isOn }) =>
    noteAlternative(build, alternativeAt(build, one), isOn ? word : ''),
  move: (build, { one, other }) => moveAlternative(build, alternativeAt(build, one), other - 3),
  remove: (build, { one }) => removeAlternative(build, alternativeAt(build, one)),
  rule: (build, hand) => addRule(build, ruleFrom(build, hand)),
  exchange: (build, hand) => replaceRule(build, hand.one % 9, ruleFrom(build, hand)),
  stale: (build, hand) => addRule(build, staleRule(build, hand)),
  mistake: (build, hand) => replaceRule(build, hand.one % 9, staleRule(build, hand)),
  stray: (build, { one, other, isOn }) => {
    const [part, ref] = [partAt(build, one), `gone/gone-${other}`];
    const worn = wearOn(giveFinish(build, part, ref), alternativeAt(build, other), part, ref);
    return setCandidate(settlePart(worn, part, isOn, ref), part, ref, true);
  },
  unrule: (build, { one }) => removeRule(build, one % 9),
  embed: (build, { one, other }) =>
    embed(build, { ...among(build.finishes, one)!, rack: 'other', id: `more-${other}` }),
  replace: (build, { one, other }) =>
    replaceFinish(build, refAt(build, one), {
      ...among(build.finishes, one)!,
      rack: 'swapped',
      // Few, so that one often meets itself.
      id: `for-${other % 3}`,
    }),
  tidy: withoutUnused,
};
const steps = fc.array(fc.record({ edit: fc.constantFrom(...Object.keys(edits)), hand: hands }), {
  minLength: 1,
  maxLength: 30,
});

describe('any sequence of edits', () => {
  it('leaves a build that a file may hold and that comes back from its text', () => {
    fc.assert(
      fc.property(fc.nat(), steps, (seed, sequence) => {
        let build = randomBuild(drawFrom(seed));
        for (const { edit, hand } of sequence) {
          build = withNamesFollowing(build, edits[edit]!(build, hand));
          expect(buildFrom(JSON.parse(textOf(build)))).toEqual(build);
        }
        buildFrom(JSON.parse(textOf(fittedBuild(build))));
        const isWorn = build.alternatives.every(({ choices }) =>
          build.parts.every((part) => !isOpen(part) || part.candidates.includes(choices[part.id]!)),
        );
        expect(isWorn).toBe(true);
      }),
      { seed: 20311125, numRuns: 150 },
    );
  });
});
