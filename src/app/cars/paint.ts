/**
 * Which colour does each traced part of the car wear? From a build, an alternative and the car's
 * sight table to the CSS variables its pictures are filled with: `--paint-ID` (sRGB hex) and
 * `--gloss-ID` (the lamp on it: white, as opaque as the surface is glossy).
 */
import { type Alternative, assignmentOf, type Build, finishesByRef } from '../../build/build.ts';
import type { SightTable } from '../../car/table.ts';
import { hexFromLab } from '../../colour/srgb.ts';
import { isCloth } from '../../finish/finish.ts';
import { asLab } from '../../ground/unit.ts';
import { lookOf } from '../pieces/look.ts';

export type Paint = ReadonlyMap<string, string>;

/** Parts nobody chooses and the table does not colour: shadow in gaps, bare dark trim elsewhere. */
const gapHex = '#1a1a1a';
const trimHex = '#464646';

/** Whiteness 0–1 of the lamp's reflection by gloss units at 60°; our judgement, for the eye only. */
const lampShare = (gloss60: number): number => Math.min(0.62, 0.02 + 0.8 * (gloss60 / 100) ** 2.4);

/** What of a build a picture of one alternative shows. */
export type Painted = Pick<Build, 'parts' | 'finishes' | 'viewing'>;

/** CSS variables of every part of the car under one alternative. */
export function paintOf(build: Painted, alternative: Alternative, sight: SightTable): Paint {
  const paint = new Map<string, string>();
  const wear = (part: string, hex: string, lamp: number): void => {
    paint.set(`--paint-${part}`, hex);
    paint.set(`--gloss-${part}`, `rgb(255 255 255 / ${Math.round(lamp * 100)}%)`);
  };
  for (const part of sight.parts) {
    if (part.given === undefined) wear(part.id, part.role === 'gap' ? gapHex : trimHex, 0.05);
    else wear(part.id, hexFromLab(asLab(...part.given.lab)).hex, lampShare(part.given.gloss60));
  }
  const finishes = finishesByRef(build);
  const assignment = assignmentOf(build, alternative);
  for (const part of build.parts) {
    const finish = finishes.get(assignment.get(part.id) ?? '');
    if (finish === undefined) continue;
    const look = lookOf(finish, build.viewing.light);
    const lamp = isCloth(finish) ? 0 : lampShare(look.gloss60);
    for (const id of part.covers) wear(id, look.hex, lamp);
  }
  return paint;
}

/** Build part id of every car part that a part of the build covers. */
export const ownersOf = ({ parts }: Pick<Build, 'parts'>): ReadonlyMap<string, string> =>
  new Map(parts.flatMap((part) => part.covers.map((id) => [id, part.id] as const)));
