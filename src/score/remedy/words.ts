/** A remedy in words: what a button says, and in one line what it would change. */
import { type Build, finishesByRef, isOpen } from '../../build/build.ts';
import { scoreKeys } from '../evidence.ts';
import { figure } from '../finding/figure.ts';
import { inWords } from '../finding/scheme.ts';
import { scoreNames } from '../name.ts';
import type { Change, Effect, Way } from './remedy.ts';

interface Said {
  readonly changes: readonly Change[];
  readonly way: Way;
  readonly like: string | undefined;
}

/** What a button says: `Repeat Marigold on Badges`. All changes put on the same finish. */
export function labelOf(build: Build, { changes, way, like }: Said): string {
  const names = new Map(build.parts.map(({ id, name }) => [id, name]));
  const parts = inWords(changes.map(({ part }) => names.get(part) ?? part));
  const ref = changes[0]?.finish ?? '';
  const finish = finishesByRef(build).get(ref)?.name ?? ref;
  const isAsPainted = changes.every(({ part }) => {
    const own = build.parts.find(({ id }) => id === part);
    return own !== undefined && !isOpen(own) && own.painted && own.finish === ref;
  });
  if (isAsPainted) return `Leave ${parts} in ${finish}, as painted`;
  if (way === 'repeat') return `Repeat ${finish} on ${parts}`;
  if (way === 'accent') return `Put ${finish} on ${parts} as an accent`;
  if (like !== undefined) return `Put ${finish} on ${parts} too, as on ${names.get(like) ?? like}`;
  return `Put ${finish} on ${parts}`;
}

const turned = (by: number): string => `${by > 0 ? '+' : '−'}${figure(Math.abs(by))}`;

/**
 * What would change: `57 → 84; accent balance +80, readiness −3; nothing more to buy`, and of the
 * builder's own choices: candidates that are added, a settled part that is departed from.
 */
export function toldOf(build: Build, changes: readonly Change[], effect: Effect): string {
  const { overall, scores, toBuy, spared, days, strips } = effect;
  const names = new Map(build.parts.map(({ id, name }) => [id, name]));
  const moved = scoreKeys.flatMap((key) => {
    const by = Math.round(scores[key].after) - Math.round(scores[key].before);
    return by === 0 ? [] : [`${scoreNames[key].toLowerCase()} ${turned(by)}`];
  });
  const later = days.after - days.before;
  return [
    `${Math.round(overall.before)} → ${Math.round(overall.after)}`,
    ...(moved.length === 0 ? [] : [moved.join(', ')]),
    ...(strips.length === 0 ? [] : [`strips ${inWords(strips.map((id) => names.get(id) ?? id))}`]),
    ...(toBuy.length === 0 ? [] : [`to buy besides: ${toBuy.join('; ')}`]),
    ...(spared.length === 0 ? [] : [`saves buying ${spared.join('; ')}`]),
    ...(toBuy.length + spared.length === 0 ? ['nothing more to buy'] : []),
    ...(later === 0
      ? []
      : [`cured in ${figure(days.after)} days instead of ${figure(days.before)}`]),
    ...choicesTold(build, changes),
  ].join('; ');
}

/** What it changes in what the builder has ticked or settled. */
function choicesTold(build: Build, changes: readonly Change[]): string[] {
  const parts = new Map(build.parts.map((part) => [part.id, part]));
  const finish = finishesByRef(build).get(changes[0]?.finish ?? '')?.name ?? '';
  const added = changes.flatMap(({ part: id, finish: ref }) => {
    const part = parts.get(id);
    return part && isOpen(part) && !part.candidates.includes(ref) ? [part.name] : [];
  });
  const departs = changes.flatMap(({ part: id, finish: ref }) => {
    const part = parts.get(id);
    return part && !isOpen(part) && part.finish !== ref ? [part.name] : [];
  });
  return [
    ...(added.length === 0 ? [] : [`makes ${finish} a candidate for ${inWords(added)}`]),
    ...departs.map((name) => `${name} is settled, and would differ on this alternative only`),
  ];
}
