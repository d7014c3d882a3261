/**
 * Which rules does an assignment break, and why? Every rule kind of a build, checked one by one
 * and told in the builder's own part and finish names.
 *
 * Whether a colour shows again, its share of the visible car and the day everything is dry need
 * colour science, sight tables and cure times; this room may not know those, so the caller hands
 * them in as `RuleFacts`.
 */
import { type Assignment, bottlesToBuy } from './bottles.ts';
import { type Build, type FinishRef, finishesByRef, type Rule } from './build.ts';

/** What a rule needs to know beyond the build itself, for the assignment being judged. */
export interface RuleFacts {
  /** Whether the colour of this part shows again in another zone. */
  echoesElsewhere(part: string): boolean;
  /** Share of the visible car that the colour of this part takes, percent 0–100. */
  sharePercent(part: string): number;
  /** Earliest day on which everything is bought, sprayed and cured, ISO date. */
  readyDate(assignment: Assignment): string;
}

export interface BrokenRule {
  /** Position of the rule in `build.rules`, from 0. */
  readonly index: number;
  readonly kind: Rule['kind'];
  /** Ids of the parts concerned; for limits over the whole build, those that count towards it. */
  readonly parts: readonly string[];
  readonly sentence: string;
  /** The second half of the sentence: what is the case instead. */
  readonly why: string;
}

/** The rules of `build` that `assignment` breaks, in file order. */
export function brokenRules(build: Build, assignment: Assignment, facts: RuleFacts): BrokenRule[] {
  const names = namesIn(build);
  return build.rules.flatMap((rule, index) => {
    const breach = breachOf(rule, build, assignment, facts, names);
    if (breach === undefined) return [];
    const sentence = `${ruleSentence(rule, names)}, but ${breach.but}.`;
    return [{ index, kind: rule.kind, parts: breach.parts, sentence, why: breach.but }];
  });
}

/** How the builder calls parts and finishes. */
export interface Names {
  part(id: string): string;
  finish(ref: FinishRef | undefined): string;
}

/** Part and finish names of a build; an unknown id stands for itself. */
export function namesIn(build: Build): Names {
  const parts = new Map(build.parts.map((part) => [part.id, part.name]));
  const finishes = finishesByRef(build);
  return {
    part: (id) => parts.get(id) ?? id,
    finish: (ref) => (ref === undefined ? 'nothing' : (finishes.get(ref)?.name ?? ref)),
  };
}

/** A piece of a rule told in words: plain text, the part or the finish that is named. */
export type RuleWord = string | { readonly part: string } | { readonly finish: FinishRef };

/** What the rule asks for, as the first half of a sentence, without a full stop. */
export const ruleSentence = (rule: Rule, { part, finish }: Names): string =>
  ruleWords(rule)
    .map((word) =>
      typeof word === 'string' ? word : 'part' in word ? part(word.part) : finish(word.finish),
    )
    .join('');

/** The same sentence in pieces, so that parts and finishes can be shown as such. */
export function ruleWords(rule: Rule): RuleWord[] {
  switch (rule.kind) {
    case 'same': {
      const [first, ...others] = rule.parts.map((part) => ({ part }));
      return others.length === 1
        ? [first!, ' must wear the same as ', others[0]!]
        : [...joined([first!, ...others]), ' must all wear the same'];
    }
    case 'if-then': {
      const { when, wants } = rule;
      const wanted = joined(
        wants.oneOf.map((finish) => ({ finish })),
        'or',
      );
      return ['With ', ...placed(when), ', ', { part: wants.part }, ' must wear ', ...wanted];
    }
    case 'never-together':
      return [...placed(rule.first), ' must not meet ', ...placed(rule.second)];
    case 'must-echo':
      return ['The colour of ', { part: rule.part }, ' must show again in another zone'];
    case 'most-new-bottles':
      return [`At most ${counted(rule.count, 'bottle')} may be bought`];
    case 'most-finishes':
      return [`At most ${counted(rule.count, 'finish', 'finishes')} may be used`];
    case 'ready-by':
      return [`Everything must be dry by ${rule.date}`];
    case 'most-share': {
      const most = `at most ${rule.percent} % of the visible car`;
      return ['The colour of ', { part: rule.part }, ` may take ${most}`];
    }
  }
}

const placed = ({ part, finish }: { part: string; finish: FinishRef }): RuleWord[] => [
  { part },
  ' in ',
  { finish },
];

/** Ids of the parts that a rule names, each once; none for limits over the whole build. */
export const partsNamed = (rule: Rule): string[] => [
  ...new Set(
    ruleWords(rule).flatMap((word) =>
      typeof word !== 'string' && 'part' in word ? [word.part] : [],
    ),
  ),
];

/** `a`, `a and b`, `a, b and c`, whatever the words are. */
const joined = (words: readonly RuleWord[], joint = 'and'): RuleWord[] =>
  words.flatMap((word, at) =>
    at === 0 ? [word] : [at === words.length - 1 ? ` ${joint} ` : ', ', word],
  );

interface Breach {
  readonly parts: readonly string[];
  /** Second half of the sentence, after “but”. */
  readonly but: string;
}

function breachOf(
  rule: Rule,
  build: Build,
  assignment: Assignment,
  facts: RuleFacts,
  names: Names,
): Breach | undefined {
  const worn = (part: string): string => names.finish(assignment.get(part));
  const wearing = (parts: readonly string[]): string =>
    listed(parts.map((part) => `${names.part(part)} in ${worn(part)}`));
  switch (rule.kind) {
    case 'same': {
      const parts = [...new Set(rule.parts)];
      const isShared = new Set(parts.map((part) => assignment.get(part))).size === 1;
      return isShared ? undefined : { parts, but: `they differ: ${wearing(parts)}` };
    }
    case 'if-then': {
      const { when, wants } = rule;
      const isCalled = assignment.get(when.part) === when.finish;
      const isMet = wants.oneOf.includes(assignment.get(wants.part) ?? '');
      if (!isCalled || isMet) return undefined;
      return { parts: [when.part, wants.part], but: `we have ${wearing([wants.part])}` };
    }
    case 'never-together': {
      const { first, second } = rule;
      const isMet =
        assignment.get(first.part) === first.finish &&
        assignment.get(second.part) === second.finish;
      return isMet ? { parts: [first.part, second.part], but: 'they do' } : undefined;
    }
    case 'must-echo':
      return facts.echoesElsewhere(rule.part)
        ? undefined
        : { parts: [rule.part], but: `${worn(rule.part)} shows in one zone only` };
    case 'most-new-bottles': {
      const toBuy = bottlesToBuy(build, assignment);
      if (toBuy.length <= rule.count) return undefined;
      const wanted = listed(toBuy.map(({ bottle }) => bottle.name));
      return {
        parts: [...new Set(toBuy.flatMap(({ parts }) => parts))],
        but: `${toBuy.length} ${toBuy.length === 1 ? 'is' : 'are'} needed: ${wanted}`,
      };
    }
    case 'most-finishes': {
      const used = new Set(assignment.values());
      return used.size <= rule.count
        ? undefined
        : { parts: [...assignment.keys()], but: `there are ${used.size}` };
    }
    case 'ready-by': {
      // ISO dates of one length sort as text.
      const ready = facts.readyDate(assignment);
      return ready <= rule.date
        ? undefined
        : { parts: [], but: `${ready} is the earliest that bottles and cure times allow` };
    }
    case 'most-share': {
      const percent = facts.sharePercent(rule.part);
      return percent <= rule.percent
        ? undefined
        : { parts: [rule.part], but: `${worn(rule.part)} takes ${percent.toFixed(1)} %` };
    }
  }
}

/** `a`, `a and b`, `a, b and c`. */
export const listed = (words: readonly string[], joint = 'and'): string =>
  words.length < 2
    ? (words[0] ?? 'none')
    : `${words.slice(0, -1).join(', ')} ${joint} ${words.at(-1)}`;

const counted = (count: number, one: string, many = `${one}s`): string =>
  `${count} ${count === 1 ? one : many}`;
