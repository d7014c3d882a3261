/**
 * What would free rules that cannot hold together? Each way out with what it leaves: taking one of
 * the rules out, or one candidate more on an open part. Tried out on the build, not guessed.
 *
 * Bounded: of many candidates those are tried first that parts or rules concerned name already.
 */
import { type Build, type FinishRef, isOpen, type OpenPart, refOf } from '../build.ts';
import { usedRefs } from '../edit/finish.ts';
import { setCandidate } from '../edit/part.ts';
import { removeRule } from '../edit/rule.ts';
import { partsNamed } from '../rule.ts';
import { type Effort, mostEffort } from './choice.ts';
import { combinationCount } from './combination.ts';
import { contradictions } from './contradiction.ts';

export type WayOut =
  | { readonly kind: 'take-out'; readonly rule: number }
  | { readonly kind: 'add-candidate'; readonly part: string; readonly finish: FinishRef };

export interface Remedy {
  readonly way: WayOut;
  /** `frees`: all rules hold; `stuck`: others still clash; `unsure`: not settled. */
  readonly kind: 'frees' | 'stuck' | 'unsure';
  /** Combinations that then keep every choice rule; undefined where counting takes too long. */
  readonly leaves: bigint | undefined;
}

/** Thinking allowed for each way out; a twentieth of a second or so (our judgement). */
const effortEach = 1_000_000;
const mostTried = 120;
/** Candidates worth reading; more are no help (our judgement). */
const mostCandidates = 4;

/** The build once a way out is taken. */
export const withRemedy = (build: Build, way: WayOut): Build =>
  way.kind === 'take-out'
    ? removeRule(build, way.rule)
    : setCandidate(build, way.part, way.finish, true);

/**
 * Ways out of a contradiction between these rules, by position: rules first, then candidates. Once
 * the effort is spent, rules are `unsure` and further candidates are not tried.
 */
export function remediesFor(
  build: Build,
  rules: readonly number[],
  effort: Effort = { left: mostEffort },
): Remedy[] {
  const takeOut = rules.map((rule) => tried(build, { kind: 'take-out', rule }, effort));
  const candidates = candidatesToTry(build, rules)
    .map((way) => tried(build, way, effort))
    .filter(({ kind }) => kind === 'frees')
    .sort((one, other) => Number((other.leaves ?? 0n) - (one.leaves ?? 0n)));
  return [...takeOut, ...candidates.slice(0, mostCandidates)];
}

function tried(build: Build, way: WayOut, effort: Effort): Remedy {
  const freed = withRemedy(build, way);
  const spend = <Answer>(think: (own: Effort) => Answer): Answer => {
    const given = Math.max(0, Math.min(effortEach, effort.left));
    const own = { left: given };
    const answer = think(own);
    effort.left -= given - own.left;
    return answer;
  };
  const verdict = spend((own) => contradictions(freed, own).kind);
  if (verdict !== 'can-hold') {
    return { way, kind: verdict === 'cannot-hold' ? 'stuck' : 'unsure', leaves: undefined };
  }
  return { way, kind: 'frees', leaves: spend((own) => combinationCount(freed, own).keepingRules) };
}

function candidatesToTry(build: Build, rules: readonly number[]): WayOut[] {
  const core = rules.map((rule) => build.rules[rule]!);
  const named = new Set(core.flatMap(partsNamed));
  const isConcerned = ({ id }: { readonly id: string }): boolean =>
    named.has(id) || core.some((rule) => partsNamed(rule).length === 0);
  const concerned = build.parts.filter((part) => !part.absent && isConcerned(part));
  const near = usedRefs({ ...build, parts: concerned, alternatives: [], rules: core });
  const all = [...new Set([...near, ...build.finishes.map(refOf)])];
  const open = concerned.filter((part): part is OpenPart => isOpen(part));
  return all
    .flatMap((finish) =>
      open
        .filter(({ candidates }) => !candidates.includes(finish))
        .map(({ id }): WayOut => ({ kind: 'add-candidate', part: id, finish })),
    )
    .slice(0, mostTried);
}
