/**
 * Which costs does a build's choice of finishes come to? The exact cost network of a build: the cost
 * of an assignment is the weighted mean of the six halvings of the sheet, so that its overall is
 * `scoreOfCost(cost)` (to Float32 in tables of pairs: some 1e-6 halvings), and what breaks a rule
 * costs `never` or more. And the ways back, from values to finishes.
 *
 * Throws `InputError` in clear words where there is nothing to rank or too much of it.
 */
import type { Build, FinishRef, OpenPart, Part } from '../../build/build.ts';
import { isOpen } from '../../build/build.ts';
import { addDays } from '../../build/date.ts';
import type { SightTable } from '../../car/table.ts';
import { type Judged, type Judging, judgeAgain } from '../../score/judged.ts';
import { type Network, never, type Rest, type Things } from '../network.ts';
import { isCarRule, restOf } from '../rest/rest.ts';
import { Draft } from './draft.ts';
import { isWeighed } from './pairs.ts';
import { checkBuild, checkCells, domainsLeft, refuseWhereNoneIsLeft } from './refuse.ts';
import { type Shares, sharesOf } from './shares.ts';
import { slotsOf } from './slots.ts';
import { addSums } from './sums.ts';
import { thingsOf } from './things.ts';
import { type Variables, variablesOf } from './variables.ts';

/** A build as a cost network, and the way back. */
export interface RankingProblem {
  readonly network: Network;
  readonly judged: Judged;
  readonly variables: Variables;
  /** Open parts on the model, in the order of the build. */
  readonly open: readonly OpenPart[];
  /** Finish of every open part, by part id. */
  choicesOf(values: ArrayLike<number>): Record<string, FinishRef>;
  /** Finish of every part on the model, by part id. */
  assignmentOf(values: ArrayLike<number>): Map<string, FinishRef>;
}

/** The problem of a build; one laid out before, where handed in, is used again as far as it can be. */
export function problemOf(
  build: Build,
  sight: SightTable,
  judging: Judging,
  laidOut?: Judged,
): RankingProblem {
  checkBuild(build);
  const domains = domainsLeft(build);
  const judged = judgeAgain(laidOut, build, sight, judging);
  const slots = slotsOf(judged.build, domains);
  if (slots.some(({ refs }) => refs.length === 0)) refuseWhereNoneIsLeft(build);
  const variables = variablesOf(judged, slots);
  const shares = sharesOf(build.weights);
  checkCells(cellsOf(judged, variables, shares), variables.sizes);
  const draft = new Draft(variables.sizes);
  addSums(draft, judged.terms, variables, shares);
  addRules(draft, judged, variables);
  const rest = restOf(judged, variables, shares);
  if (rest !== undefined && judged.build.rules.some(isCarRule)) forbidAlone(draft, rest);
  if (draft.base >= never || draft.unary.some((own) => own.every((cost) => cost >= never))) {
    refuseWhereNoneIsLeft(build);
  }
  const things = thingsOf(judged, variables, shares);
  const { sizes, unary, edges } = draft;
  const base = draft.base + paidAnyway(things);
  const network: Network = {
    sizes,
    base,
    unary,
    edges,
    ...(things === undefined ? {} : { things }),
    ...(rest === undefined ? {} : { rest }),
  };
  return { network, judged, variables, ...waysBack(judged.build, variables) };
}

const paidAnyway = (things: Things | undefined): number =>
  things?.always.reduce((sum, thing) => sum + things.cost[thing]!, 0) ?? 0;

/** Cells of the tables that pairs of variables would take. */
function cellsOf({ terms }: Judged, { of, sizes }: Variables, shares: Shares): number {
  const pairs = new Map<string, number>();
  for (const pair of terms.pairs) {
    const [i, j] = [of[pair.a]!, of[pair.b]!];
    if (i < 0 || j < 0 || i === j || !isWeighed(pair, shares)) continue;
    pairs.set([i, j].sort().join(), sizes[i]! * sizes[j]!);
  }
  return [...pairs.values()].reduce((sum, cells) => sum + cells, 0);
}

/** Forbids what rules about two choices, or about a day, do not allow. */
function addRules(draft: Draft, { build, terms, from }: Judged, variables: Variables): void {
  for (const rule of build.rules) {
    if (rule.kind === 'if-then') {
      const { when, wants } = rule;
      const [one, other] = [variables.placeOf(when.part)!, variables.placeOf(wants.part)!];
      const isMet = new Set(wants.oneOf);
      draft.forbid(one, other, (ref, another) => ref === when.finish && !isMet.has(another));
    } else if (rule.kind === 'never-together') {
      const { first, second } = rule;
      const [one, other] = [variables.placeOf(first.part)!, variables.placeOf(second.part)!];
      draft.forbid(one, other, (ref, another) => ref === first.finish && another === second.finish);
    } else if (rule.kind === 'ready-by') {
      const { today } = from.judging;
      const isLate = (days: number): boolean => addDays(today, days) > rule.date;
      if (isLate(0)) draft.base += never;
      for (const [at, all] of terms.candidates.entries()) {
        const daysOf = (a: number): number => all[variables.candidateOf[at]![a]!]!.preparation.days;
        draft.add(variables.of[at]!, (a) => (isLate(daysOf(a)) ? never : 0));
      }
    }
  }
}

/** Forbids values that the rest does not allow whatever the others are. */
function forbidAlone({ sizes, unary }: Draft, rest: Rest): void {
  const values = new Int32Array(sizes.length).fill(-1);
  sizes.forEach((size, i) => {
    for (let a = 0; a < size; a++) {
      values[i] = a;
      if (rest.bound(values) >= never) unary[i]![a]! += never;
    }
    values[i] = -1;
  });
}

function waysBack(build: Build, { slots, certain }: Variables) {
  const open = build.parts.filter((part): part is OpenPart => isOpen(part));
  const assignmentOf = (values: ArrayLike<number>): Map<string, FinishRef> => {
    const refs = new Map<string, FinishRef>();
    const wear = (parts: readonly Part[], ref: FinishRef): void => {
      for (const { id } of parts) refs.set(id, ref);
    };
    for (const slot of certain) wear(slot.parts, slot.refs[0]!);
    for (const [i, slot] of slots.entries()) wear(slot.parts, slot.refs[values[i]!]!);
    return refs;
  };
  return {
    open,
    assignmentOf,
    choicesOf: (values: ArrayLike<number>): Record<string, FinishRef> => {
      const refs = assignmentOf(values);
      return Object.fromEntries(open.map(({ id }) => [id, refs.get(id)!]));
    },
  };
}
