/**
 * What does each rule cost? The best overall with all rules, and with all but one: the difference is
 * the price of that one. Where no combination keeps them all, which of them stands in the way.
 *
 * Points of the overall, exact to 0.001 where every search came to its end; where one was stopped, a
 * price lies between `least` and `most`. A build, its car and what is wanted in; the searches are
 * those of `rankBuild`, one row each.
 */
import type { Build } from '../../build/build.ts';
import { fittedIn, fittedRule } from '../../build/fitted.ts';
import type { SightTable } from '../../car/table.ts';
import { InputError } from '../../ground/problem.ts';
import { type Judged, type Judging, judge } from '../../score/judged.ts';
import { checkBuild } from '../problem/refuse.ts';
import { rankBuild } from '../rank.ts';
import type { RankedRow, Ranking } from '../ranking.ts';
import { levelWithin } from './figures.ts';

/** What the best combination of a build comes to. */
export interface Reached {
  /** The best found; undefined where none was. */
  readonly row: RankedRow | undefined;
  /** Overall that nothing exceeds; undefined where no combination is allowed, or nothing is known. */
  readonly atMost: number | undefined;
  /** The best there is, or proved that there is none. */
  readonly isProved: boolean;
}

/**
 * What taking one rule out does: `costs` points; `free`, since the best with it is as good; `frees`,
 * where with it nothing is allowed; `stuck`, where nothing is without it either; `unsure`, where the
 * search was stopped before that could be told.
 */
export type PriceKind = 'costs' | 'free' | 'frees' | 'stuck' | 'unsure';

export interface RuleCost {
  /** Position in `build.rules`, from 0. */
  readonly rule: number;
  readonly kind: PriceKind;
  /** Points that the rule costs lie between these; undefined where none can be told. */
  readonly least: number | undefined;
  readonly most: number | undefined;
  /** The best without it. */
  readonly without: Reached;
}

export interface RuleCosts {
  readonly withAll: Reached;
  /** In the order of the build; fewer than it has where the search is not through yet. */
  readonly rules: readonly RuleCost[];
}

/** How the searches are watched and stopped. */
export interface PriceWatch {
  isOver?(): boolean;
  /** Hears of every rule as its price is known. */
  tell?(soFar: RuleCosts): void;
}

const nothingKnown: Reached = { row: undefined, atMost: undefined, isProved: false };
const nothingAllowed: Reached = { row: undefined, atMost: undefined, isProved: true };

/**
 * The price of every rule. A ranking of the build that is at hand saves the first search, the build
 * laid out saves doing so again. Throws
 * `InputError` where the build cannot be ranked for another reason than its rules.
 */
export function ruleCosts(
  build: Build,
  sight: SightTable,
  judging: Judging,
  watch: PriceWatch = {},
  atHand?: Ranking,
  laidOut: Judged | undefined = undefined,
): RuleCosts {
  checkBuild(build);
  const isOver = (): boolean => watch.isOver?.() ?? false;
  const wanted = { ...judging, count: 1, isDifferent: false };
  let judged = laidOut;
  const reach = (asked: Build): Reached => {
    if (isOver()) return nothingKnown;
    judged ??= judge(build, sight, judging);
    try {
      return reachedIn(rankBuild(asked, sight, wanted, { isOver }, judged));
    } catch (fault) {
      if (!(fault instanceof InputError)) throw fault;
      if (fault.problems.every(({ place }) => place === 'rules')) return nothingAllowed;
      // Parts that a rule had tied may be too much to rank without it.
      if (asked === build) throw fault;
      return nothingKnown;
    }
  };
  const withAll = atHand === undefined ? reach(build) : reachedIn(atHand);
  const isFitted = fittedIn(build);
  const rules: RuleCost[] = [];
  build.rules.forEach((rule, at) => {
    const isIdle = fittedRule(rule, isFitted) === undefined;
    const others = { ...build, rules: build.rules.toSpliced(at, 1) };
    rules.push(costOfRule(at, withAll, isIdle ? withAll : reach(others)));
    watch.tell?.({ withAll, rules: [...rules] });
  });
  return { withAll, rules };
}

const reachedIn = ({ rows, atMost, isProved }: Ranking): Reached =>
  rows.length === 0 && isProved ? nothingAllowed : { row: rows[0], atMost, isProved };

function costOfRule(rule: number, withAll: Reached, without: Reached): RuleCost {
  const [best, better] = [withAll.row?.sheet.overall, without.row?.sheet.overall];
  const told = (kind: PriceKind, least?: number, most?: number): RuleCost => ({
    rule,
    kind,
    least,
    most,
    without,
  });
  if (best === undefined) {
    if (!withAll.isProved) return told('unsure');
    if (better !== undefined) return told('frees');
    return told(without.isProved ? 'stuck' : 'unsure');
  }
  // What keeps all rules keeps all but one: without it nothing is lost.
  const most = without.atMost === undefined ? undefined : Math.max(0, without.atMost - best);
  const least = Math.max(0, (better ?? best) - (withAll.atMost ?? 100));
  const isLevel = least < levelWithin;
  if (isLevel && withAll.isProved && without.isProved) return told('free', 0, 0);
  if (most !== undefined && most < levelWithin) return told('free', 0, 0);
  if (isLevel) return told('unsure', 0, most);
  return told('costs', least, most);
}
