/**
 * Does everything in a build point at something that is there? Checks what a schema cannot:
 * parts, finishes and candidates named elsewhere, ids used twice, days the calendar lacks.
 *
 * Works on a partly readable build too (`Outline`): what failed the schema is left out, so that
 * its faults and these are told together.
 */
import { type Problem, shown } from '../ground/problem.ts';
import { type Alternative, type Build, isOpen, type Part, type Rule, refOf } from './build.ts';
import { coverProblems } from './coverage.ts';
import { isRealDate } from './date.ts';
import { didYouMean } from './nearest.ts';

/** The parts of a build that references run between; unreadable entries are undefined. */
export interface Outline {
  /** `rack/finish` of every embedded finish. */
  readonly refs: readonly (string | undefined)[];
  /** Id of every part, also of those otherwise unreadable. */
  readonly partIds: readonly (string | undefined)[];
  readonly parts: readonly (Part | undefined)[];
  readonly rules: readonly (Rule | undefined)[];
  readonly alternatives: readonly (Alternative | undefined)[];
  readonly mustRead: readonly string[];
  readonly wantedBy: string | undefined;
}

export const outlineOf = (build: Build): Outline => ({
  refs: build.finishes.map(refOf),
  partIds: build.parts.map((part) => part.id),
  parts: build.parts,
  rules: build.rules,
  alternatives: build.alternatives,
  mustRead: build.mustRead,
  wantedBy: build.wantedBy,
});

/** Every reference of the outline that leads nowhere, clashes or repeats. */
export function referenceProblems(outline: Outline): Problem[] {
  const refs = new Set(outline.refs.filter((ref) => ref !== undefined));
  const ids = new Set(outline.partIds.filter((id) => id !== undefined));
  const alternatives = outline.alternatives.filter((alternative) => alternative !== undefined);
  return [
    ...repeated(outline.refs, 'finishes', 'its rack and id together'),
    ...repeated(outline.partIds, 'parts', 'its id'),
    ...repeated(
      outline.alternatives.map((alternative) => alternative?.id),
      'alternatives',
      'its id',
    ),
    ...outline.parts.flatMap((part) =>
      part !== undefined && isOpen(part)
        ? repeated(part.candidates, `parts › ${part.id} › candidates`, 'each candidate')
        : [],
    ),
    ...reserved(outline.partIds),
    ...coverProblems(outline.parts),
    ...absentProblems(outline.parts),
    ...mentionsIn(outline).flatMap((mention) => mentionProblems(mention, ids, refs)),
    ...alternatives.flatMap((alternative) => choiceProblems(alternative, outline.parts, ids, refs)),
  ];
}

/** A model of which nothing is there: there would be nothing to look at. */
function absentProblems(parts: Outline['parts']): Problem[] {
  if (parts.length === 0 || !parts.every((part) => part?.absent)) return [];
  const expected = 'at least one part that is on the model';
  const mend = 'Set “absent” of one of them to false.';
  return [{ place: 'parts', found: 'none that is on the model', expected, mend }];
}

/** Every part, finish or day of one rule that the build does not know. */
export function ruleProblems(build: Build, rule: Rule): Problem[] {
  const ids = new Set(build.parts.map(({ id }) => id));
  const refs = new Set(build.finishes.map(refOf));
  return mentionsBy(rule, 'rule').flatMap((mention) => mentionProblems(mention, ids, refs));
}

/** A place where the build names a part, a finish or a day. */
interface Mention {
  readonly of: 'part' | 'finish' | 'day';
  readonly name: string;
  readonly place: string;
}

const mention = (of: Mention['of'], name: string, ...steps: (string | number)[]): Mention => ({
  of,
  name,
  place: steps.join(' › '),
});

function mentionsIn({ wantedBy, parts, mustRead, rules }: Outline): Mention[] {
  return [
    ...(wantedBy === undefined ? [] : [mention('day', wantedBy, 'wantedBy')]),
    ...parts
      .filter((part) => part !== undefined)
      .flatMap((part) =>
        isOpen(part)
          ? part.candidates.map((ref, position) =>
              mention('finish', ref, 'parts', part.id, 'candidates', position + 1),
            )
          : [mention('finish', part.finish, 'parts', part.id, 'finish')],
      ),
    ...mustRead.map((id, position) => mention('part', id, 'mustRead', position + 1)),
    ...rules.flatMap((rule, position) =>
      rule === undefined ? [] : mentionsBy(rule, `rules › ${position + 1}`),
    ),
  ];
}

function mentionsBy(rule: Rule, place: string): Mention[] {
  switch (rule.kind) {
    case 'same':
      return rule.parts.map((id, position) => mention('part', id, place, 'parts', position + 1));
    case 'if-then':
      return [
        mention('part', rule.when.part, place, 'when', 'part'),
        mention('finish', rule.when.finish, place, 'when', 'finish'),
        mention('part', rule.wants.part, place, 'wants', 'part'),
        ...rule.wants.oneOf.map((ref, position) =>
          mention('finish', ref, place, 'wants', 'oneOf', position + 1),
        ),
      ];
    case 'never-together':
      return (['first', 'second'] as const).flatMap((side) => [
        mention('part', rule[side].part, place, side, 'part'),
        mention('finish', rule[side].finish, place, side, 'finish'),
      ]);
    case 'must-echo':
    case 'most-share':
      return [mention('part', rule.part, place, 'part')];
    case 'ready-by':
      return [mention('day', rule.date, place, 'date')];
    case 'most-new-bottles':
    case 'most-finishes':
      return [];
  }
}

function mentionProblems(
  { of, name, place }: Mention,
  ids: ReadonlySet<string>,
  refs: ReadonlySet<string>,
): Problem[] {
  const found = shown(name);
  if (of === 'day') {
    if (isRealDate(name)) return [];
    const expected = 'a day that the calendar has';
    return [{ place, found, expected, mend: 'Correct the day or the month.' }];
  }
  const known = of === 'part' ? ids : refs;
  if (known.has(name)) return [];
  return [
    {
      place,
      found,
      expected: of === 'part' ? 'the id of a part of this build' : 'a finish this build holds',
      mend: `Correct the name or add it to “${of === 'part' ? 'parts' : 'finishes'}”.${didYouMean(name, known)}`,
    },
  ];
}

/**
 * Choices of one alternative: every open part once, each among its candidates; a settled part may
 * be named too, with any finish of the build, which for a painted one means stripping.
 */
function choiceProblems(
  { id, choices }: Alternative,
  parts: readonly (Part | undefined)[],
  ids: ReadonlySet<string>,
  refs: ReadonlySet<string>,
): Problem[] {
  const place = `alternatives › ${id} › choices`;
  const readable = parts.filter((part) => part !== undefined);
  const strangers = Object.keys(choices)
    .filter((partId) => !ids.has(partId))
    .map((partId) => ({
      place,
      found: shown(partId),
      expected: 'the id of a part',
      mend: `Correct the name or take it out.${didYouMean(partId, ids)}`,
    }));
  const unfit = readable.flatMap((part): Problem[] => {
    const ref = Object.hasOwn(choices, part.id) ? choices[part.id] : undefined;
    const here = `${place} › ${part.id}`;
    if (!isOpen(part)) {
      if (ref === undefined) return [];
      return mentionProblems({ of: 'finish', name: ref, place: here }, ids, refs);
    }
    if (ref === undefined) {
      const mend = `Add "${part.id}": "${part.candidates[0]}" or another of its candidates.`;
      return [{ place: here, found: 'nothing', expected: 'a finish for every open part', mend }];
    }
    if (part.candidates.includes(ref)) return [];
    return [
      {
        place: here,
        found: shown(ref),
        expected: `a candidate of the part, which has ${part.candidates.length}`,
        mend: `Choose one of them or add this to them.${didYouMean(ref, part.candidates)}`,
      },
    ];
  });
  return [...strangers, ...unfit];
}

function repeated(words: readonly (string | undefined)[], place: string, what: string): Problem[] {
  const firstAt = new Map<string, number>();
  return words.flatMap((word, position): Problem[] => {
    if (word === undefined) return [];
    const earlier = firstAt.get(word);
    if (earlier === undefined) {
      firstAt.set(word, position);
      return [];
    }
    return [
      {
        place: `${place} › ${position + 1}`,
        found: `${shown(word)}, as in entry ${earlier + 1}`,
        expected: `${what} once only`,
        mend: 'Take one of the two out or change one of them.',
      },
    ];
  });
}

/** Ids that an object of choices cannot hold, because every object has a field so called. */
const reserved = (ids: readonly (string | undefined)[]): Problem[] =>
  ids.flatMap((id, position): Problem[] =>
    id !== 'constructor' && id !== 'prototype'
      ? []
      : [
          {
            place: `parts › ${position + 1} › id`,
            found: shown(id),
            expected: 'an id that no programming language keeps for itself',
            mend: 'Give the part another id.',
          },
        ],
  );
