/**
 * When could this assignment be finished, counted from today? Bottles to order, old paint to
 * strip, films to spray one on another, the last one to cure. Days in, ISO dates out; cure times
 * per chemistry come from src/finish/cure.ts as [low, high], because sources differ.
 *
 * A film starts once its bottle is here and the film below can be handled. Different finishes
 * dry side by side. Limits: an evening is taken to be enough for one film of every finish, and
 * masking over fresh paint elsewhere on the car is not counted, so the dates are the earliest
 * that paint allows, not a promise. The data sheet of the product wins.
 */
import { type CureTimes, cureOf, type Span } from '../finish/cure.ts';
import type { Chemistry, Finish } from '../finish/finish.ts';
import { type Assignment, isToSpray, isToStrip, shelfOf } from './bottles.ts';
import { type Build, type FinishRef, finishesByRef } from './build.ts';
import { addDays } from './date.ts';

/** Days to take old paint off, wash and dry the part (our judgement: soak, scrub, dry overnight). */
export const strippingDays = 2;

/** What a schedule needs of a chemistry class; those of cure.ts unless a builder has better. */
export type Waits = Pick<CureTimes, 'handleHours' | 'cureDays'>;

/** How long one finish keeps its parts waiting. */
export interface Wait {
  readonly finish: FinishRef;
  readonly parts: readonly string[];
  /** Old paint comes off first. */
  readonly isStripped: boolean;
  /** Films to spray, undercoats and clear included. */
  readonly films: number;
  /** Longest lead time among its bottles to buy, days. */
  readonly leadDays: number;
  /** Days from today until it is cured. */
  readonly days: Span;
}

export interface Schedule {
  /** Every finish still to go on, the longest wait first. */
  readonly waits: readonly Wait[];
  readonly earliest: string;
  readonly latest: string;
}

/** Dates by which `assignment` can be cured when work starts on `today` (ISO date). */
export function scheduleOf(
  build: Build,
  assignment: Assignment,
  today: string,
  waitsOf: (chemistry: Chemistry) => Waits = cureOf,
): Schedule {
  const finishes = finishesByRef(build);
  const shelf = shelfOf(build);
  const leadOf = (bottle: { id: string } | undefined): number => {
    const held = bottle === undefined ? undefined : shelf.get(bottle.id);
    return held === undefined || held.onHand ? 0 : held.leadDays;
  };
  const groups = new Map<string, { finish: FinishRef; isStripped: boolean; parts: string[] }>();
  for (const part of build.parts) {
    const ref = assignment.get(part.id);
    if (ref === undefined || !finishes.has(ref) || !isToSpray(part, ref)) continue;
    const isStripped = isToStrip(part, ref);
    const key = `${ref} ${isStripped}`;
    const group = groups.get(key) ?? { finish: ref, isStripped, parts: [] };
    group.parts.push(part.id);
    groups.set(key, group);
  }
  const waits = [...groups.values()].map(({ finish, isStripped, parts }): Wait => {
    const films = filmsOf(finishes.get(finish)!);
    const days = daysUntilCured(finishes.get(finish)!, isStripped, leadOf, waitsOf);
    const leadDays = Math.max(...films.map(({ bottle }) => leadOf(bottle)));
    return { finish, parts, isStripped, films: films.length, leadDays, days };
  });
  waits.sort((a, b) => b.days[0] - a.days[0] || b.days[1] - a.days[1]);
  const longest = (end: 0 | 1): number => Math.max(0, ...waits.map(({ days }) => days[end]));
  return {
    waits,
    earliest: addDays(today, longest(0)),
    latest: addDays(today, longest(1)),
  };
}

/** Whole days until one finish has cured, from today; `leadOf` gives a bottle's days to wait. */
export function daysUntilCured(
  finish: Finish,
  isStripped: boolean,
  leadOf: (bottle: { id: string } | undefined) => number,
  waitsOf: (chemistry: Chemistry) => Waits = cureOf,
): Span {
  const films = filmsOf(finish);
  const until = (end: 0 | 1): number => {
    let day = isStripped ? strippingDays : 0;
    films.forEach(({ chemistry, bottle }, position) => {
      const { handleHours, cureDays } = waitsOf(chemistry);
      const wait = position === films.length - 1 ? cureDays[end] : handleHours[end] / 24;
      day = Math.max(day, leadOf(bottle)) + wait;
    });
    return Math.ceil(day);
  };
  return [until(0), until(1)];
}

/** Films of a finish in the order they go on. */
const filmsOf = (finish: Finish): Pick<Finish, 'chemistry' | 'bottle'>[] => [
  ...finish.undercoats,
  finish,
  ...(finish.clear === undefined ? [] : [finish.clear]),
];
