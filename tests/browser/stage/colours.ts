/**
 * Colours to hold the stage against: an even grid through the gamut of a screen and every finish of
 * the racks, with conversions by a second library (colorjs.io), independent of the product's own.
 */
import { readFileSync } from 'node:fs';
import Color from 'colorjs.io';
import { ciede2000 } from '../../../src/colour/difference.ts';
import { appearanceOf } from '../../../src/finish/appearance.ts';
import type { Finish } from '../../../src/finish/finish.ts';
import { parseRack } from '../../../src/finish/rack/rack.ts';
import { asLab, type Lab } from '../../../src/ground/unit.ts';
import { type Surface, surfaceOf } from '../../../src/stage/surface/surface.ts';
import { finishWith } from '../../finish/sample.ts';
import type { Sent } from './page/bench.ts';
import { bytesOf } from './studio.ts';

export type Rgb = readonly [number, number, number];
/** Scale of the roadster as a model. */
export const scale = 24;

const rackText = (name: string): string =>
  readFileSync(new URL(`../../../palettes/${name}.json`, import.meta.url), 'utf8');
export const racks: readonly Finish[] = ['bench-drawer', 'corner-shop'].flatMap(
  (name) => parseRack(rackText(name), name).finishes,
);

/** The finish of a rack by its id. */
export function racked(id: string): Finish {
  const found = racks.find((finish) => finish.id === id);
  if (found === undefined) throw new Error(`no rack holds ${id}`);
  return found;
}

/** 64 colours spread evenly through the screen's gamut, then the looks of all racked finishes. */
export function spread(): Finish['colour'][] {
  const steps = [0, 85, 170, 255].map((step) => step.toString(16).padStart(2, '0'));
  const grid = steps.flatMap((r) => steps.flatMap((g) => steps.map((b) => `#${r}${g}${b}`)));
  const looks = racks.map((finish) => appearanceOf(finish, 'D65').lab);
  return [
    ...grid.map((srgb) => ({ srgb })),
    ...looks.map(([l, a, b]) => ({ lab: [l, a, b] as [number, number, number] })),
  ].map((colour) => finishWith({ colour }).colour);
}

export interface Staged {
  readonly surface: Surface;
  /** The scored look as a screen can show it. */
  readonly hex: string;
}

/** A finish as the product hands it to the shader, and the colour it was scored as. */
export function staged(finish: Finish): Staged {
  const look = appearanceOf(finish, 'D65');
  return { surface: surfaceOf(finish, look, scale), hex: look.hex };
}

/** Linear light of a screen's channel 0–255, IEC 61966-2-1. */
export const linearOf = (channel: number): number => {
  const c = channel / 255;
  return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
};

export const linearOfHex = (hex: string): Rgb =>
  new Color(hex).to('srgb-linear').coords as [number, number, number];

/** Lab (D65) of linear light, by the second library. */
export function labOf(rgb: Rgb): Lab {
  const [l, a, b] = new Color('srgb-linear', [rgb[0], rgb[1], rgb[2]]).to('lab-d65').coords;
  return asLab(l ?? 0, a ?? 0, b ?? 0);
}

/** Linear light of a Lab (D65), by the second library; unclipped. */
export const linearOfLab = (lab: Lab): Rgb =>
  new Color('lab-d65', [lab[0], lab[1], lab[2]]).to('srgb-linear').coords as [
    number,
    number,
    number,
  ];

/**
 * CIEDE2000 by the project's own, checked against print, and by the second library's formula. That
 * library takes every `lab` for D50; the formula knows no white, so D65 values are passed as such.
 */
export function differences(one: Rgb, other: Rgb): { ours: number; second: number } {
  const [first, next] = [labOf(one), labOf(other)];
  const asD50 = ([l, a, b]: Lab): Color => new Color('lab', [l, a, b]);
  const second = asD50(first).deltaE(asD50(next), '2000');
  return { ours: ciede2000(first, next), second };
}

/** Indices of the pixels within `share` of the half width from the middle of a square picture. */
export function disc(side: number, share: number): number[] {
  const all = Array.from({ length: side * side }, (_, at) => at);
  const reach = (share * side) / 2;
  return all.filter((at) => {
    const [x, y] = [(at % side) + 0.5 - side / 2, Math.floor(at / side) + 0.5 - side / 2];
    return Math.hypot(x, y) <= reach;
  });
}

/** Mean of some pixels in linear light; throws where one of them is not opaque. */
export function meanOf(picture: Sent, pixels: readonly number[]): Rgb {
  const bytes = bytesOf(picture);
  const sum = [0, 0, 0];
  for (const at of pixels) {
    if (bytes[at * 4 + 3] !== 255) throw new Error(`pixel ${at} is not opaque`);
    for (let k = 0; k < 3; k++) sum[k]! += linearOf(bytes[at * 4 + k]!);
  }
  return sum.map((total) => total / pixels.length) as unknown as Rgb;
}

/** Relative luminance of linear light, IEC 61966-2-1. */
export const luminanceOf = ([r, g, b]: Rgb): number => 0.2126 * r + 0.7152 * g + 0.0722 * b;
