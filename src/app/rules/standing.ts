/** How does each rule stand on each alternative, and does it ever apply? Told in words. */
import { assignmentOf, type Build, isOpen, letterOf, type Rule } from '../../build/build.ts';
import { idleWishes, neverApplies, type Unworn } from '../../build/choice/idle.ts';
import { fittedBuild, fittedIn, fittedRule } from '../../build/fitted.ts';
import { brokenRules, listed, namesIn, partsNamed, type RuleFacts } from '../../build/rule.ts';

/** An alternative that breaks a rule: its letter, and what is the case instead. */
export interface Breach {
  readonly letter: string;
  readonly why: string;
}

/** For every rule of the build the alternatives that break it, in order. */
export function breachesIn(build: Build, facts: readonly RuleFacts[]): Breach[][] {
  const fitted = fittedBuild(build);
  const isFitted = fittedIn(build);
  const places = build.rules.flatMap((rule, at) =>
    fittedRule(rule, isFitted) === undefined ? [] : [at],
  );
  const breaches: Breach[][] = build.rules.map(() => []);
  build.alternatives.forEach((alternative, at) => {
    const assignment = assignmentOf(build, alternative);
    for (const { index, why } of brokenRules(fitted, assignment, facts[at]!)) {
      breaches[places[index]!]!.push({ letter: letterOf(at), why });
    }
  });
  return breaches;
}

/** What a rule could say of parts that are on this model: of open ones where there are two. */
export function exampleOf(build: Build): string {
  const { parts } = fittedBuild(build);
  const open = parts.filter(isOpen);
  const [one, other] = open.length > 1 ? open : parts.filter(({ id }) => usual.includes(id));
  if (one === undefined || other === undefined) return 'two parts in one colour';
  return `${other.name} like ${one.name}`;
}

/** Parts that often wear the same; common practice, no source. */
const usual: readonly string[] = ['mirrors', 'badges', 'calipers'];

/** Letters or numbers named before the rest is counted. */
const mostLetters = 8;

/** `A, B and C`, or the first few and how many more. */
export function lettersInWords(letters: readonly string[]): string {
  const more = letters.length - mostLetters;
  return more > 1 ? listed([...letters.slice(0, mostLetters), `${more} more`]) : listed(letters);
}

/** Alternatives that break a rule for the same reason, told together. */
export function togetherByReason(breaches: readonly Breach[]): { letters: string; why: string }[] {
  const byReason = new Map<string, string[]>();
  for (const { letter, why } of breaches) byReason.set(why, [...(byReason.get(why) ?? []), letter]);
  return [...byReason].map(([why, letters]) => ({ letters: lettersInWords(letters), why }));
}

/** Which others a rule cannot hold together with, by number; undefined where it stands apart. */
export function clashWords(clash: readonly number[] | undefined, at: number): string | undefined {
  if (clash === undefined || !clash.includes(at)) return undefined;
  const others = clash.filter((rule) => rule !== at).map((rule) => String(rule + 1));
  if (others.length === 0) return 'No combination of the candidates keeps it.';
  const which = `${others.length === 1 ? 'rule' : 'rules'} ${lettersInWords(others)}`;
  return `It cannot hold together with ${which}.`;
}

/** Why a rule says nothing on this model, or less than it seems to; undefined where it does. */
export function idleWords(build: Build, rule: Rule): string | undefined {
  const names = namesIn(build);
  const isFitted = fittedIn(build);
  if (fittedRule(rule, isFitted) === undefined) {
    const gone = partsNamed(rule).filter((part) => !isFitted(part));
    return `Rests: not on this model: ${listed(gone.map(names.part))}.`;
  }
  const told = ({ part, finish }: Unworn): string =>
    `${names.finish(finish)} is no candidate of ${names.part(part)}`;
  const never = neverApplies(build, rule);
  if (never.length > 0) return `Can never apply: ${listed(never.map(told))}.`;
  const wishes = idleWishes(build, rule);
  return wishes.length === 0 ? undefined : `${listed(wishes.map(told))}.`;
}
