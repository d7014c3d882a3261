/**
 * Which finishes of the build could go on a part? Its candidates, and whatever is of a sort it
 * wears already: paint for paint, ribbon for ribbon. In the cabin and on trim also flake only for
 * flake, and no more than a plain step of sheen from what is named: nobody sprays seats in wheel
 * silver. Nothing where nobody would put it. Our judgement of what a builder would want offered.
 *
 * Also which parts move together: those that a rule holds to one finish, where it is kept.
 */
import { type Build, type FinishRef, isOpen, type Part } from '../../build/build.ts';
import type { BrokenRule } from '../../build/rule.ts';
import { sheenTellsApart } from '../judgement.ts';
import { isOutOfPlace } from '../seen/material.ts';
import type { Surface } from '../seen/scene.ts';
import type { Worn } from '../seen/worn.ts';

/** Finishes a part names: its candidates or settled finish, and what alternatives put on it. */
export const namedFor = (build: Build, part: Part): FinishRef[] => [
  ...new Set([
    ...(isOpen(part) ? part.candidates : [part.finish]),
    ...build.alternatives.flatMap(({ choices }) => choices[part.id] ?? []),
  ]),
];

const isOneSort = (one: Worn, other: Worn): boolean =>
  one.effect === other.effect ||
  (one.isPaint && other.isPaint && one.effect !== 'leather' && other.effect !== 'leather');

/** Whether a part could wear a finish; its named ones it always can. */
export function takerOf(
  named: readonly Worn[],
  { group, role }: Surface,
): (finish: Worn) => boolean {
  const refs = new Set(named.map(({ ref }) => ref));
  const isFree = role === 'feature' && group !== 'cabin';
  const isUsual = (finish: Worn): boolean =>
    named.some(
      (one) =>
        isOneSort(one, finish) &&
        (isFree ||
          (one.isFlake === finish.isFlake &&
            Math.abs(one.sheenStep - finish.sheenStep) < sheenTellsApart)),
    );
  return (finish) =>
    refs.has(finish.ref) || (isUsual(finish) && !isOutOfPlace(finish.effect, group));
}

/** The parts with all that a kept rule holds to the same finish, in the order of the build. */
export function movingWith(
  build: Build,
  broken: readonly BrokenRule[],
  parts: readonly string[],
): string[] {
  const moving = new Set(parts);
  const held = build.rules.flatMap((rule, index) =>
    rule.kind === 'same' && !broken.some((one) => one.index === index) ? [rule.parts] : [],
  );
  for (let size = 0; size < moving.size; ) {
    size = moving.size;
    for (const group of held) {
      if (group.some((part) => moving.has(part))) for (const part of group) moving.add(part);
    }
  }
  return build.parts.flatMap(({ id }) => (moving.has(id) ? [id] : []));
}
