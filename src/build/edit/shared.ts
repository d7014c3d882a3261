/**
 * Which finishes could be tried as one accent, on all the parts that may wear them? Where open parts
 * share candidates, the alternatives a builder wants are those that are all in one of them.
 *
 * A build in; groups of finishes with the parts that wear them together out, in the order in which
 * parts and candidates stand. Parts that a rule ties to wear the same do so all together or not at
 * all; what other rules say is left to whoever shows the result. Parts that are not on the model
 * count for nothing. What counts as shared is our judgement.
 */
import { type Alternative, type Build, type FinishRef, isOpen, type Part } from '../build.ts';
import { fittedBuild } from '../fitted.ts';

/** A finish that several open parts may wear together. */
export interface Shared {
  readonly finish: FinishRef;
  /** Ids of the open parts that would all wear it; at least two. */
  readonly parts: readonly string[];
}

/** More finishes than a build has room for alternatives are nobody's question. */
const mostFinishes = 100;
/** So many parts two finishes must have in common to be one question. */
const leastParts = 2;

const known = new WeakMap<Build, readonly (readonly Shared[])[]>();

/**
 * Finishes that two or more open parts may wear together, each gathered with those that it shares
 * two such parts with: each group is one question, that on most parts first.
 */
export function sharedFinishes(build: Build): readonly (readonly Shared[])[] {
  const before = known.get(build);
  if (before !== undefined) return before;
  const offers = offersOf(fittedBuild(build)).filter(({ parts }) => parts.length >= leastParts);
  const groups = offers.length > mostFinishes ? [] : grouped(offers);
  known.set(build, groups);
  return groups;
}

/** Whether these choices put a shared finish on every part that may wear it. */
export const isAllIn = (choices: Alternative['choices'], { finish, parts }: Shared): boolean =>
  parts.every((part) => choices[part] === finish);

/** Every candidate with the open parts that could wear it all at once. */
function offersOf(build: Build): Shared[] {
  const tied = tiesOf(build);
  const parts = new Map(build.parts.map((part) => [part.id, part]));
  const offers = new Map<FinishRef, string[]>();
  for (const part of build.parts) {
    if (!isOpen(part)) continue;
    for (const ref of part.candidates) {
      const isFree = tied(part.id).every((id) => couldWear(parts.get(id), ref));
      if (isFree) offers.set(ref, [...(offers.get(ref) ?? []), part.id]);
    }
  }
  return [...offers].map(([finish, ids]) => ({ finish, parts: ids }));
}

const couldWear = (part: Part | undefined, ref: FinishRef): boolean =>
  part !== undefined && (isOpen(part) ? part.candidates.includes(ref) : part.finish === ref);

/** For each part all parts that rules tie it to, itself included. */
function tiesOf(build: Build): (part: string) => readonly string[] {
  const groups = new Map<string, readonly string[]>();
  const of = (part: string): readonly string[] => groups.get(part) ?? [part];
  for (const rule of build.rules) {
    if (rule.kind !== 'same') continue;
    const group = [...new Set(rule.parts.flatMap(of))];
    for (const part of group) groups.set(part, group);
  }
  return of;
}

function grouped(offers: readonly Shared[]): (readonly Shared[])[] {
  const groups: Shared[][] = [];
  const left = new Set(offers);
  for (const first of offers) {
    if (!left.delete(first)) continue;
    const group = [first];
    // Grows while it is walked through.
    for (const one of group) {
      for (const other of left) {
        if (!haveCommon(one, other)) continue;
        left.delete(other);
        group.push(other);
      }
    }
    const inOrder = offers.filter((offer) => group.includes(offer));
    if (group.length > 1) groups.push(inOrder);
  }
  return groups.sort((one, other) => most(other) - most(one));
}

const most = (group: readonly Shared[]): number =>
  Math.max(...group.map(({ parts }) => parts.length));

const haveCommon = (one: Shared, other: Shared): boolean =>
  one.parts.filter((part) => other.parts.includes(part)).length >= leastParts;
