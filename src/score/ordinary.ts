/**
 * Is this number good? How many of 100 ordinary schemes an alternative is ahead of: schemes of the
 * same finishes on the same car, put together without much thought.
 *
 * In: a build and its car. Out: overalls of seeded ordinary schemes, rising. Our judgement: every
 * part but the body draws a neutral with chance 0.6, else any finish of its kind (cloth for cloth,
 * nothing where nobody would put it);
 * then what usually matches does so with chance 0.65: small skin parts wear the body's finish,
 * small cabin parts the seats', rims the wheels'. Rules are not asked.
 */
import { type Build, finishesByRef, type Part, usualFinish } from '../build/build.ts';
import type { SightTable } from '../car/table.ts';
import { isCloth } from '../finish/finish.ts';
import { type Draw, drawFrom } from '../ground/draw.ts';
import { type Judging, judge } from './judged.ts';
import { followChance, neutralChance, ordinaryCount } from './judgement.ts';
import { isOutOfPlace } from './seen/material.ts';
import type { Scene, Surface } from './seen/scene.ts';
import { overallOf, type Terms } from './terms.ts';

const seed = 24_601;

/** Overalls 0–100 of ordinary schemes of this build, rising. */
export function ordinaryOveralls(build: Build, sight: SightTable, judging: Judging): Float64Array {
  const { terms } = judge(withEveryFinish(build), sight, judging);
  const draw = drawFrom(seed);
  const leaders = leadersOf(terms.scene);
  const costs = new Float64Array(6);
  return Float64Array.from({ length: ordinaryCount }, () =>
    overallOf(terms.costs(ordinaryChoice(terms, leaders, draw), costs), build.weights),
  ).sort();
}

/** How many of 100 ordinary schemes lie below an overall; level ones count half. */
export function aheadOfOrdinary(overalls: Float64Array, overall: number): number {
  let below = 0;
  for (const one of overalls) below += one < overall ? 1 : one === overall ? 0.5 : 0;
  return (100 * below) / Math.max(1, overalls.length);
}

/** Finishes an ordinary scheme is put together from; more say no more, and cost their cube. */
const mostDrawnFrom = 150;

/** At most `mostDrawnFrom` of the list, evenly spaced. */
function sampleOf<T>(list: readonly T[]): readonly T[] {
  const count = Math.min(list.length, mostDrawnFrom);
  return Array.from({ length: count }, (_, k) => list[Math.floor((k * list.length) / count)]!);
}

/** The build with every part open to every finish of its kind, and no alternatives. */
function withEveryFinish(build: Build): Build {
  const finishes = finishesByRef(build);
  const cloth = [...finishes].flatMap(([ref, finish]) => (isCloth(finish) ? [ref] : []));
  const hard = [...finishes].flatMap(([ref, finish]) => (isCloth(finish) ? [] : [ref]));
  const opened = build.parts.map((part): Part => {
    const { id, name, covers, absent } = part;
    const finish = finishes.get(usualFinish(part));
    const kind = finish !== undefined && isCloth(finish) ? cloth : hard;
    return { id, name, covers, absent, candidates: [...sampleOf(kind)] };
  });
  return { ...build, parts: opened, alternatives: [], rules: [] };
}

/** The surface each one usually matches; itself where none. */
function leadersOf({ surfaces, main }: Scene): Int32Array {
  const largest = (isMeant: (surface: Surface) => boolean): number =>
    surfaces.reduce(
      (best, surface, at) =>
        isMeant(surface) && (best < 0 || surface.areaMm2 > surfaces[best]!.areaMm2) ? at : best,
      -1,
    );
  const seats = largest(({ group, role }) => group === 'cabin' && role === 'feature');
  const wheels = largest(({ group, role }) => group === 'wheels' && role === 'feature');
  return Int32Array.from(surfaces, ({ group, role, given }, at) => {
    if (given !== undefined) return at;
    const leader =
      group === 'skin' && role === 'feature'
        ? main
        : group === 'cabin' && role === 'feature'
          ? seats
          : group === 'wheels' && role === 'ground'
            ? wheels
            : at;
    return leader < 0 ? at : leader;
  });
}

function ordinaryChoice({ candidates, scene }: Terms, leaders: Int32Array, draw: Draw): number[] {
  const choice = candidates.map((list, at) => {
    const { group } = scene.surfaces[at]!;
    const fitting = list.flatMap(({ worn }, c) => (isOutOfPlace(worn.effect, group) ? [] : [c]));
    const usable = fitting.length > 0 ? fitting : list.map((_, c) => c);
    const neutral = usable.filter((c) => list[c]!.worn.isNeutral);
    const isPlain = at !== scene.main && neutral.length > 0 && draw.uniform() < neutralChance;
    const drawn = isPlain ? neutral : usable;
    return drawn[draw.below(drawn.length)]!;
  });
  leaders.forEach((leader, at) => {
    if (leader === at || draw.uniform() >= followChance) return;
    const ref = candidates[leader]![choice[leader]!]!.worn.ref;
    const same = candidates[at]!.findIndex(({ worn }) => worn.ref === ref);
    if (same >= 0) choice[at] = same;
  });
  return choice;
}
