/**
 * A rule as it is being filled in: blanks that may still be empty, kept while another kind is
 * tried, so that nothing has to be chosen twice.
 */
import {
  type Build,
  type FinishRef,
  isOpen,
  type Part,
  type Rule,
  refOf,
} from '../../build/build.ts';
import { isRealDate } from '../../build/date.ts';

export type Kind = Rule['kind'];

export interface Draft {
  readonly kind: Kind;
  /** Ids, in the order of the blanks; an empty text is a blank. */
  readonly parts: readonly string[];
  /** Finish that goes with the first and with the second part. */
  readonly finishes: readonly [FinishRef, FinishRef];
  readonly oneOf: readonly FinishRef[];
  readonly bottles: string;
  readonly most: string;
  /** Percent of the visible car. */
  readonly percent: string;
  /** ISO date. */
  readonly date: string;
}

const blank: Draft = {
  kind: 'same',
  parts: ['', ''],
  finishes: ['', ''],
  oneOf: [],
  bottles: '2',
  most: '5',
  percent: '5',
  date: '',
};

/** An empty rule, with a part in its first blank where one is asked about. */
export const freshDraft = (build: Build, part = ''): Draft => ({
  ...blank,
  parts: [part, ''],
  finishes: [onlyFinish(build, part), ''],
  date: build.wantedBy ?? '',
});

/** What the kinds are, in the order they are offered, by what they say. */
export const kinds: readonly { readonly kind: Kind; readonly says: string }[] = [
  { kind: 'same', says: 'Parts wear the same finish' },
  { kind: 'if-then', says: 'One choice asks for another' },
  { kind: 'never-together', says: 'Two choices never meet' },
  { kind: 'must-echo', says: 'A colour shows again elsewhere' },
  { kind: 'most-share', says: 'A colour takes at most a share' },
  { kind: 'most-finishes', says: 'At most so many finishes' },
  { kind: 'most-new-bottles', says: 'At most so many bottles to buy' },
  { kind: 'ready-by', says: 'All dry by a date' },
];

/** A rule of the build as blanks filled in. */
export function draftOf(build: Build, rule: Rule): Draft {
  const fresh = { ...freshDraft(build), kind: rule.kind };
  switch (rule.kind) {
    case 'same':
      return { ...fresh, parts: rule.parts };
    case 'if-then': {
      const { when, wants } = rule;
      const parts = [when.part, wants.part];
      return { ...fresh, parts, finishes: [when.finish, ''], oneOf: wants.oneOf };
    }
    case 'never-together': {
      const { first, second } = rule;
      const finishes = [first.finish, second.finish] as const;
      return { ...fresh, parts: [first.part, second.part], finishes };
    }
    case 'must-echo':
      return { ...fresh, parts: [rule.part, ''] };
    case 'most-share':
      return { ...fresh, parts: [rule.part, ''], percent: String(rule.percent) };
    case 'most-new-bottles':
      return { ...fresh, bottles: String(rule.count) };
    case 'most-finishes':
      return { ...fresh, most: String(rule.count) };
    case 'ready-by':
      return { ...fresh, date: rule.date };
  }
}

/** The rule that the blanks say, or what is still to be filled in. */
export function ruleFrom(draft: Draft): { readonly rule: Rule } | { readonly missing: string } {
  const { kind, finishes, oneOf } = draft;
  const parts = draft.parts.filter((part) => part !== '');
  const [first = '', second = ''] = draft.parts;
  const areTwo = first !== '' && second !== '';
  const lacking = parts.length === 0 ? 'two parts' : 'the other part';
  switch (kind) {
    case 'same':
      return parts.length < 2 ? { missing: lacking } : { rule: { kind, parts } };
    case 'if-then': {
      if (!areTwo) return { missing: lacking };
      if (finishes[0] === '') return { missing: 'the finish of the first part' };
      if (oneOf.length === 0) return { missing: 'a finish that the second part must wear' };
      const when = { part: first, finish: finishes[0] };
      return { rule: { kind, when, wants: { part: second, oneOf: [...oneOf] } } };
    }
    case 'never-together':
      if (!areTwo) return { missing: lacking };
      if (finishes.includes('')) return { missing: 'a finish for each of the two' };
      return {
        rule: {
          kind,
          first: { part: first, finish: finishes[0] },
          second: { part: second, finish: finishes[1] },
        },
      };
    case 'must-echo':
      return first === '' ? { missing: 'a part' } : { rule: { kind, part: first } };
    case 'most-share': {
      const percent = numberFrom(draft.percent);
      if (first === '') return { missing: 'a part' };
      if (!(percent >= 0 && percent <= 100)) return { missing: 'a share from 0 to 100 %' };
      return { rule: { kind, part: first, percent } };
    }
    case 'most-new-bottles':
    case 'most-finishes': {
      const count = numberFrom(kind === 'most-finishes' ? draft.most : draft.bottles);
      const isCount = Number.isInteger(count) && count >= 0 && count <= 1000;
      return isCount ? { rule: { kind, count } } : { missing: 'a whole number from 0 to 1000' };
    }
    case 'ready-by':
      return isRealDate(draft.date)
        ? { rule: { kind, date: draft.date } }
        : { missing: 'a day that the calendar has' };
  }
}

/** What was typed as a number; a comma may stand for the point. */
const numberFrom = (typed: string): number =>
  /^\s*\d+(?:[.,]\d*)?\s*$/.test(typed) ? Number(typed.replace(',', '.')) : Number.NaN;

/** What a part can wear: its candidates, or what it is settled on and where alternatives depart. */
export function finishesFor(build: Build, part: Part | undefined): FinishRef[] {
  if (part === undefined) return [];
  if (isOpen(part)) return part.candidates;
  const departing = build.alternatives.flatMap(({ choices }) => choices[part.id] ?? []);
  return [...new Set([part.finish, ...departing])];
}

const onlyFinish = (build: Build, id: string): FinishRef => {
  const refs = finishesFor(
    build,
    build.parts.find((part) => part.id === id),
  );
  return refs.length === 1 ? refs[0]! : '';
};

/** The draft with another part in one blank; a finish that it cannot wear is left blank. */
export function withPart(build: Build, draft: Draft, at: number, part: string): Draft {
  const parts = [...draft.parts];
  parts[at] = part;
  const wearable = finishesFor(
    build,
    build.parts.find(({ id }) => id === part),
  );
  const fitting = (ref: FinishRef): FinishRef =>
    wearable.includes(ref) ? ref : onlyFinish(build, part);
  const [one, other] = draft.finishes;
  return {
    ...draft,
    parts,
    finishes: [at === 0 ? fitting(one) : one, at === 1 ? fitting(other) : other],
    oneOf: at === 1 ? draft.oneOf.filter((ref) => wearable.includes(ref)) : draft.oneOf,
  };
}

/** The draft over a build that may have changed: a part or finish that has gone is a blank again. */
export function draftOver(build: Build, draft: Draft): Draft {
  const ids = new Set(build.parts.map(({ id }) => id));
  const refs = new Set(build.finishes.map(refOf));
  const isThere = (at: number, ref: FinishRef): boolean =>
    ids.has(draft.parts[at] ?? '') && refs.has(ref);
  const [one, other] = draft.finishes;
  const next: Draft = {
    ...draft,
    parts: draft.parts.map((part) => (ids.has(part) ? part : '')),
    finishes: [isThere(0, one) ? one : '', isThere(1, other) ? other : ''],
    oneOf: draft.oneOf.filter((ref) => isThere(1, ref)),
  };
  const isSame =
    next.parts.every((part, at) => part === draft.parts[at]) &&
    next.finishes.every((ref, at) => ref === draft.finishes[at]) &&
    next.oneOf.length === draft.oneOf.length;
  return isSame ? draft : next;
}
