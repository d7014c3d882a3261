/**
 * Which small changes would mend what an alternative is marked down for?
 *
 * In: a build laid out for scoring and one of its alternatives. Out: for each finding of its sheet,
 * in the same order, at most three remedies, best first. Each keeps every rule that is kept now,
 * moves parts that a rule holds together as one, and is offered only where the finding's own score
 * and the overall by a point or more rise, or where the finding goes and nothing is lost. What it
 * promises is worked out on the changed build by the very same terms.
 *
 * Candidates of open parts come first, then what would be a candidate besides; one settled part only
 * where no open part can mend it, never two; within each by the overall reached (our judgement).
 * Limits: finishes that the build's parts and alternatives name; one finish a remedy; parts that
 * are not on the model are left alone.
 */

import { isToStrip } from '../../build/bottles.ts';
import {
  type Alternative,
  assignmentOf,
  type Build,
  isOpen,
  type Part,
} from '../../build/build.ts';
import { brokenRules } from '../../build/rule.ts';
import type { ScoreSheet } from '../comparison.ts';
import { type Evidence, scoreKeys } from '../evidence.ts';
import { schemeOf } from '../finding/scheme.ts';
import { gainWithout } from '../headline.ts';
import { type Judged, judgeAgain } from '../judged.ts';
import { comparisonOf } from '../sheet.ts';
import { type Bench, benchFor, type Takes, takesIn } from './bench.ts';
import { effectOf, type Worked, workedFrom } from './effect.ts';
import { type Change, type Remedy, withChanges } from './remedy.ts';
import { type Site, sitesFor } from './site.ts';
import { movingWith } from './takes.ts';
import { labelOf, toldOf } from './words.ts';

/** Remedies a finding gets, and how many of them may touch the same parts. */
const mostRemedies = 3;
const mostOnSameParts = 2;
/** Points of the overall a remedy must bring, unless the finding goes. */
export const leastRise = 1;
/**
 * What a remedy asks of the builder: to take what is ticked or settled on; to tick another finish;
 * to depart from a settled part; to strip paint. The gentlest first.
 */
const asks = { nothing: 0, ticking: 1, departing: 2, stripping: 3 } as const;
/** Points a finding must take from the overall to be worth a remedy; one that wastes paint is too. */
const worthMending = 0.5;
/** Remedies of no great rise that are worked out in full to see whether the finding goes. */
const mostLookedInto = 12;

interface Move {
  readonly changes: readonly Change[];
  readonly site: Site;
  readonly overall: number;
  readonly asks: number;
  readonly answers: boolean;
}

/** Remedies for every finding of one alternative's sheet, in the order of its evidence. */
export function remediesFor(judged: Judged, alternative: Alternative): Remedy[][] {
  const before = workedOut(judged, alternative.id);
  if (before === undefined) return [];
  const assignment = assignmentOf(judged.build, alternative);
  const choice = judged.choiceOf(assignment);
  const scheme = schemeOf(judged.terms, choice);
  const broken = brokenRules(judged.build, assignment, judged.factsOf(choice));
  const takes = takesIn(judged);
  const own = judged.build.alternatives.find(({ id }) => id === alternative.id)!;
  const bench = benchFor(judged, own, takes);
  const promised = new Map<string, Worked>();
  const promise = (changes: readonly Change[]): Worked => {
    const key = changes.map(({ part, finish }) => `${part}:${finish}`).join();
    let known = promised.get(key);
    if (known === undefined) {
      const changed = withChanges(judged.from.build, alternative.id, changes);
      known = workedOut(
        judgeAgain(judged, changed, judged.from.sight, judged.from.judging),
        alternative.id,
      )!;
      promised.set(key, known);
    }
    return known;
  };
  return before.sheet.evidence.map((finding) => {
    const taken = gainWithout(before.sheet, finding, judged.build.weights);
    if (taken < worthMending && finding.kind !== 'wasted') return [];
    const moves = movesFor(finding, sitesFor(finding, scheme), {
      build: judged.build,
      worn: assignment,
      together: (parts) => movingWith(judged.build, broken, parts),
      takes,
      bench,
    });
    const keeps = ({ changes }: Move): boolean =>
      bench.broken(changes).every((index) => broken.some((one) => one.index === index));
    return chosenFrom(moves, keeps, finding, before, promise).map(({ move, after }) => {
      const { changes, site } = move;
      const effect = effectOf(before, after, finding);
      const finish = changes[0]!.finish;
      const like = finding.parts.find(
        (part) =>
          assignment.get(part) === finish && !changes.some((change) => change.part === part),
      );
      const way = site.way === 'swap' && like !== undefined ? 'match' : site.way;
      const said = { changes, way, like };
      return {
        ...said,
        effect,
        label: labelOf(judged.build, said),
        told: toldOf(judged.build, changes, effect),
      };
    });
  });
}

function workedOut(judged: Judged, id: string): Worked | undefined {
  const alternative = judged.build.alternatives.find((one) => one.id === id);
  const sheet: ScoreSheet | undefined = comparisonOf(judged, {
    ...judged.from.judging,
    withoutCloseness: true,
  }).alternatives.find((one) => one.id === id);
  if (sheet === undefined || alternative === undefined) return undefined;
  return workedFrom(judged, sheet, judged.choiceOf(assignmentOf(judged.build, alternative)));
}

interface Looking {
  readonly build: Build;
  readonly worn: ReadonlyMap<string, string>;
  readonly together: (parts: readonly string[]) => string[];
  readonly takes: Takes;
  readonly bench: Bench;
}

/** Everything that could be tried for a finding, best first. */
function movesFor(finding: Evidence, sites: readonly Site[], looking: Looking): Move[] {
  const { build, worn, together, takes, bench } = looking;
  const parts = new Map(build.parts.map((part) => [part.id, part]));
  const own = scoreKeys.indexOf(finding.score);
  const ready = scoreKeys.indexOf('readiness');
  const { weights } = build;
  // Its own score must gain, and not be paid for by what it takes; others may gain besides.
  const answers = (now: Float64Array, then: Float64Array): boolean => {
    const gained = now[own]! - then[own]!;
    const paid = own === ready ? 0 : then[ready]! - now[ready]!;
    return gained > 0 && weights[finding.score] * gained > weights.readiness * paid;
  };
  const seen = new Set<string>();
  const moves: Move[] = [];
  const moving = sites.map((site) => together(site.parts.filter((part) => parts.has(part))));
  const { costs: now } = bench.try([]);
  sites.forEach((site, k) => {
    for (const { ref, worn: finish, family } of bench.pool) {
      if (!site.suits(finish, family)) continue;
      const changes = moving[k]!.flatMap((part) =>
        worn.get(part) === ref ? [] : [{ part, finish: ref }],
      );
      const key = `${changes.map(({ part }) => part).join()} ${ref}`;
      if (changes.length === 0 || seen.has(key)) continue;
      if (!changes.every(({ part }) => takes(part, ref))) continue;
      seen.add(key);
      const each = changes.map(({ part }) => askedOf(parts.get(part)!, ref));
      if (each.filter((one) => one >= asks.departing).length > 1) continue;
      const { overall, costs } = bench.try(changes);
      moves.push({ changes, site, overall, asks: Math.max(...each), answers: answers(now, costs) });
    }
  });
  return moves.sort(
    (one, other) =>
      one.asks - other.asks ||
      other.overall - one.overall ||
      one.changes.length - other.changes.length,
  );
}

function askedOf(part: Part, ref: string): number {
  if (isOpen(part)) return part.candidates.includes(ref) ? asks.nothing : asks.ticking;
  if (part.finish === ref) return asks.nothing;
  return isToStrip(part, ref) ? asks.stripping : asks.departing;
}

/** The few that hold what they should, worked out in full. */
function chosenFrom(
  moves: readonly Move[],
  keeps: (move: Move) => boolean,
  finding: Evidence,
  before: Worked,
  promise: (changes: readonly Change[]) => Worked,
): { move: Move; after: Worked }[] {
  const chosen: { move: Move; after: Worked }[] = [];
  const touched = new Map<string, number>();
  let lookedInto = 0;
  for (const move of moves) {
    if (chosen.length === mostRemedies) break;
    const rises = move.overall >= before.sheet.overall + leastRise;
    if (!rises && (move.overall < before.sheet.overall || lookedInto >= mostLookedInto)) continue;
    const site = move.changes.map(({ part }) => part).join();
    const times = touched.get(site) ?? 0;
    if (times === mostOnSameParts || !move.answers || !keeps(move)) continue;
    // What is settled stays so where an open part helps; paint comes off only where nothing else does.
    const gentlest = chosen[0]?.move.asks ?? move.asks;
    if (
      move.asks > Math.max(gentlest, asks.ticking) ||
      (move.asks === asks.stripping && chosen.length > 0)
    )
      continue;
    const after = promise(move.changes);
    if (!rises) lookedInto++;
    const { overall, clears, scores } = effectOf(before, after, finding);
    const own = scores[finding.score];
    const mends = own.after > own.before && overall.after >= overall.before + leastRise;
    if (!mends && !(clears && overall.after >= overall.before)) continue;
    touched.set(site, times + 1);
    chosen.push({ move, after });
  }
  return chosen;
}
