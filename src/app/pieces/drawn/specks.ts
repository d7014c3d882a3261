/**
 * The specks that spoons share: flake, pearl, creases of leather, hairs of flock. They fall by a
 * fixed seed, so every visit shows the same spoon. Units of the bowl's drawing; our judgement.
 */
import { drawFrom } from '../../../ground/draw.ts';

export const tile = 24;
export const round = (value: number): number => Math.round(value * 100) / 100;

export interface Speck {
  readonly x: number;
  readonly y: number;
  readonly radius: number;
  readonly opacity: number;
  readonly isBright: boolean;
}

function specksFrom(seed: number, count: number, largest: number): Speck[] {
  const draw = drawFrom(seed);
  return Array.from({ length: count }, () => ({
    x: round(draw.uniform() * tile),
    y: round(draw.uniform() * tile),
    radius: round(0.25 + draw.uniform() * largest),
    opacity: round(0.15 + draw.uniform() * 0.55),
    isBright: draw.uniform() < 0.7,
  }));
}

export const flake = specksFrom(11, 120, 0.32);
export const pearl = specksFrom(12, 60, 0.3);
export const creases = specksFrom(13, 34, 1.1);
export const hairs = specksFrom(14, 110, 0.4);
