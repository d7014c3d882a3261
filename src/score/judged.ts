/**
 * A build laid out for scoring: its scene, what every part may wear and what that would take, and
 * the facts that rules ask for.
 */
import { type Assignment, isToSpray, isToStrip, shelfOf } from '../build/bottles.ts';
import { type Build, finishesByRef, isOpen, type Part } from '../build/build.ts';
import { addDays, daysBetween } from '../build/date.ts';
import { fittedBuild } from '../build/fitted.ts';
import type { RuleFacts } from '../build/rule.ts';
import { daysUntilCured } from '../build/schedule.ts';
import type { SightTable } from '../car/table.ts';
import type { LightId } from '../colour/illuminant.ts';
import { cureOf } from '../finish/cure.ts';
import { bottlesOf, type Finish } from '../finish/finish.ts';
import { type Candidate, nothingToDo, type Preparation } from './seen/candidate.ts';
import { sceneOf } from './seen/scene.ts';
import { type Worn, wornAsGiven, wornFrom } from './seen/worn.ts';
import { showingOf } from './six/accent.ts';
import { readinessOf } from './six/readiness.ts';
import { type Terms, termsOf } from './terms.ts';

/** What a comparison is judged under where it is not as the build says. */
export interface Judging {
  /** ISO date readiness is counted from. */
  readonly today: string;
  readonly light?: LightId | undefined;
  readonly distanceMm?: number | undefined;
}

export interface Judged {
  /** The build without parts that are not on the model. */
  readonly build: Build;
  /** What it was laid out from. */
  readonly from: { readonly build: Build; readonly sight: SightTable; readonly judging: Judging };
  readonly light: LightId;
  readonly terms: Terms;
  readonly bottleNames: ReadonlyMap<string, string>;
  /** Position of each surface's finish among its candidates. */
  choiceOf(assignment: Assignment): Int32Array;
  /** What rules ask about a choice. */
  factsOf(choice: ArrayLike<number>): RuleFacts;
}

/** Lays a build out for scoring. The build must have passed `parseBuild`. */
export function judge(described: Build, sight: SightTable, judging: Judging): Judged {
  const build = fittedBuild(described);
  const light = judging.light ?? build.viewing.light;
  const scene = sceneOf(described, sight, judging.distanceMm ?? build.viewing.distanceMm);
  const finishes = finishesByRef(build);
  const shelf = shelfOf(build);
  const parts = new Map(build.parts.map((part) => [part.id, part]));
  const worn = new Map<string, Worn>();
  const wornOf = (ref: string, finish: Finish): Worn => {
    let known = worn.get(ref);
    if (known === undefined) {
      known = wornFrom(ref, finish, light);
      worn.set(ref, known);
    }
    return known;
  };
  const refs = scene.surfaces.map(({ id }) => refsFor(build, parts.get(id)));
  const candidates = scene.surfaces.map((surface, at): Candidate[] => {
    if (surface.given !== undefined) {
      return [{ worn: wornAsGiven(surface.id, surface.given), preparation: nothingToDo }];
    }
    const part = parts.get(surface.id)!;
    return refs[at]!.map((ref) => ({
      worn: wornOf(ref, finishes.get(ref)!),
      preparation: preparationFor(part, ref, finishes.get(ref)!, shelf),
    }));
  });
  const terms = termsOf({
    scene,
    candidates,
    tonal: build.tonal,
    mustRead: build.mustRead,
    daysWanted:
      build.wantedBy === undefined ? undefined : daysBetween(judging.today, build.wantedBy),
  });
  return {
    build,
    from: { build: described, sight, judging },
    light,
    terms,
    bottleNames: new Map([...shelf.values()].map(({ id, name }) => [id, name])),
    choiceOf: (assignment) =>
      Int32Array.from(scene.surfaces, ({ id, given }, at) =>
        given !== undefined ? 0 : refs[at]!.indexOf(assignment.get(id)!),
      ),
    factsOf: (choice) => factsOf(terms, choice, judging.today),
  };
}

/**
 * Lays a build out for scoring, keeping the tables of one laid out before where only alternatives,
 * rules, weights or words have changed since.
 */
export function judgeAgain(
  before: Judged | undefined,
  build: Build,
  sight: SightTable,
  judging: Judging,
): Judged {
  if (before === undefined || !isLaidOutAlike(before.from, { build, sight, judging })) {
    return judge(build, sight, judging);
  }
  return { ...before, build: fittedBuild(build), from: { build, sight, judging } };
}

function isLaidOutAlike(one: Judged['from'], other: Judged['from']): boolean {
  const hasSameScene =
    one.sight === other.sight &&
    one.judging.today === other.judging.today &&
    one.judging.light === other.judging.light &&
    one.judging.distanceMm === other.judging.distanceMm;
  const fields = ['finishes', 'viewing', 'scale', 'tonal', 'mustRead', 'wantedBy'] as const;
  if (!hasSameScene || fields.some((field) => one.build[field] !== other.build[field]))
    return false;
  if (
    one.build.parts === other.build.parts &&
    one.build.alternatives === other.build.alternatives
  ) {
    return true;
  }
  const { parts } = other.build;
  return (
    parts.length === one.build.parts.length &&
    parts.every((part, at) => {
      const earlier = one.build.parts[at]!;
      if (earlier.id !== part.id || earlier.absent !== part.absent) return false;
      if (earlier.covers !== part.covers || earlier.name !== part.name) return false;
      const [was, is] = [refsFor(one.build, earlier), refsFor(other.build, part)];
      return isPaintedAlike(earlier, part) && was.join() === is.join();
    })
  );
}

/** Whether two tellings of one part ask for the same work. */
const isPaintedAlike = (one: Part, other: Part): boolean =>
  one === other ||
  (isOpen(one)
    ? isOpen(other)
    : !isOpen(other) && one.painted === other.painted && one.finish === other.finish);

/** Every finish the part may wear: candidates, the settled one, and what alternatives name. */
function refsFor(build: Build, part: Part | undefined): string[] {
  if (part === undefined) return [];
  const named = build.alternatives.flatMap(({ choices }) => choices[part.id] ?? []);
  return [...new Set([...(isOpen(part) ? part.candidates : [part.finish]), ...named])];
}

function preparationFor(
  part: Part,
  ref: string,
  finish: Finish,
  shelf: ReturnType<typeof shelfOf>,
): Preparation {
  if (!isToSpray(part, ref)) return nothingToDo;
  const missing = bottlesOf(finish)
    .map(({ id }) => shelf.get(id)!)
    .filter(({ onHand }) => !onHand);
  const strips = isToStrip(part, ref);
  const leadOf = (bottle: { id: string } | undefined): number =>
    missing.find(({ id }) => id === bottle?.id)?.leadDays ?? 0;
  return {
    toBuy: missing.map(({ id }) => id),
    days: daysUntilCured(finish, strips, leadOf, cureOf)[0],
    strips,
  };
}

function factsOf(terms: Terms, choice: ArrayLike<number>, today: string): RuleFacts {
  const showing = (part: string) => showingFor(terms, choice, part);
  return {
    echoesElsewhere: (part) => {
      const shown = showing(part);
      return shown !== undefined && shown.zones.length > 1;
    },
    sharePercent: (part) => showing(part)?.sharePercent ?? 0,
    readyDate: () => addDays(today, readinessOf(terms.candidates, choice).days),
  };
}

/** What the colour of a part shows of itself on the whole car. */
export function showingFor(terms: Terms, choice: ArrayLike<number>, part: string) {
  const { scene, familyOf, painted } = terms;
  const at = scene.positions.get(part);
  if (at === undefined || scene.surfaces[at]!.given !== undefined) return undefined;
  const family = familyOf[at]![choice[at]!]!;
  const wearers = scene.surfaces.flatMap((_, k) =>
    familyOf[k]![choice[k]!] === family ? [k] : [],
  );
  return showingOf(scene, family, wearers, painted);
}
