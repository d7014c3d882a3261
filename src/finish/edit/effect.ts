/**
 * What becomes of a finish when it turns out to be of another sort? Fields that only the old sort
 * has are dropped, and named, so that a builder sees what went.
 *
 * A finish in, a finish out without faults. Flop is for metallic and pearl only; what is not
 * painted has neither films nor chemistry, is not sprayed in coats, and takes its colour as it is.
 */
import { type Effect, type Finish, materialEffects, paintEffects } from '../finish.ts';
import type { Look } from '../flop.ts';

/** Whether the finish is paint rather than cloth, rubber, foil and the like. */
export const isPaint = ({ effect }: Pick<Finish, 'effect'>): boolean =>
  (paintEffects as readonly Effect[]).includes(effect);
export const isMaterial = ({ effect }: Pick<Finish, 'effect'>): boolean =>
  (materialEffects as readonly Effect[]).includes(effect);
/** Whether the colour is that of aligned flake, so that face and flop can be told. */
export const hasFlake = ({ effect }: Pick<Finish, 'effect'>): boolean =>
  effect === 'metallic' || effect === 'pearl';
/** Whether the colour is a dye, seen through its coats. */
export const isDyed = ({ effect }: Pick<Finish, 'effect'>): boolean =>
  effect === 'candy' || effect === 'clear';

export interface EffectChange {
  readonly finish: Finish;
  /** What was dropped, in words: `flop index 9`. */
  readonly dropped: readonly string[];
}

/** The finish as one of another effect. */
export function setEffect(finish: Finish, effect: Effect): EffectChange {
  if (effect === finish.effect) return { finish, dropped: [] };
  const dropped: string[] = [];
  let next: Finish = { ...finish, effect };
  if (!hasFlake(next)) {
    const { face, flop, flopIndex, ...rest } = next;
    if (face !== undefined) dropped.push('the colour of the face');
    if (flop !== undefined) dropped.push('the colour of the flop');
    if (flopIndex !== undefined) dropped.push(`flop index ${flopIndex}`);
    next = rest;
  }
  if (isMaterial(next)) {
    const { clear, ...rest } = next;
    if (clear !== undefined) dropped.push(`the clear coat (${clear.name})`);
    dropped.push(...next.undercoats.map(({ name }) => `an undercoat (${name})`));
    if (next.chemistry !== 'none') dropped.push(`the paint’s chemistry (${next.chemistry})`);
    if (next.coats > 1) dropped.push(`${next.coats} coats`);
    next = { ...rest, chemistry: 'none', coats: 1, undercoats: [] };
  }
  return { finish: next, dropped };
}

/** How much a flake turns from face to flop, in words; index [Alman1987], words our judgement. */
export const flopWords = [
  { id: 'hardly', name: 'hardly turns', flopIndex: 3 },
  { id: 'softly', name: 'turns softly', flopIndex: 6 },
  { id: 'plainly', name: 'turns plainly', flopIndex: 10 },
  { id: 'strongly', name: 'turns strongly', flopIndex: 16 },
] as const;

/** How a flake's turning is told: as usual for its kind, by flop index, or by face and flop. */
export type FlopForm = 'usual' | 'index' | 'colours';

export const flopFormOf = ({ face, flop, flopIndex }: Finish): FlopForm =>
  face !== undefined || flop !== undefined
    ? 'colours'
    : flopIndex === undefined
      ? 'usual'
      : 'index';

/** Nothing recorded about face and flop. */
export function withoutFlop(finish: Finish): Finish {
  const { face: _face, flop: _flop, flopIndex: _flopIndex, ...rest } = finish;
  return rest;
}

/** Face and flop by index, in place of colours. Changes only a flake. */
export const setFlopIndex = (finish: Finish, flopIndex: number): Finish =>
  hasFlake(finish) ? { ...withoutFlop(finish), flopIndex } : finish;

/** The colour of the face or the flop, in place of an index. Changes only a flake. */
export function setFlopColour(
  finish: Finish,
  look: Exclude<Look, 'colour'>,
  colour: Finish['colour'] | undefined,
): Finish {
  if (!hasFlake(finish)) return finish;
  const { flopIndex: _index, [look]: _before, ...rest } = finish;
  return colour === undefined ? rest : { ...rest, [look]: colour };
}
