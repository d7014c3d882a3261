/**
 * The sight table of a car: what each part shows from where, measured from its mesh and stored
 * beside it. Lengths and areas are full-size millimetres; a build divides lengths by its scale
 * and areas by its square. Never typed by hand.
 */
import * as v from 'valibot';

const size = v.pipe(v.number(), v.finite(), v.minValue(0));

export const zones = ['nose', 'bonnet', 'flank', 'wheels', 'cabin', 'deck', 'tail'] as const;
/** Where on the car a surface sits. */
export type Zone = (typeof zones)[number];

export const roles = ['feature', 'ground', 'given', 'gap'] as const;
/**
 * feature: wears a finish someone chooses and should read; ground: painted trim that may blend;
 * given: tyres, glass, lamps, plate, discs and nuts, seen only as neighbours; gap: panel gaps and
 * openings, dissolved into what surrounds them.
 */
export type Role = (typeof roles)[number];

export const groups = ['skin', 'cabin', 'wheels', 'trim'] as const;
/** Which part of the car a part belongs to when finishes are compared as a set. */
export type Group = (typeof groups)[number];

export const sightTableSchema = v.strictObject({
  $schema: v.optional(v.string()),
  format: v.literal('testspoon-sight'),
  version: v.literal(1),
  /** Car id, the file name of its GLB. */
  car: v.string(),
  name: v.string(),
  lengthMm: size,
  /** SHA-256 of the GLB the table was measured from, hex. */
  meshSha256: v.string(),
  looks: v.array(
    v.strictObject({
      id: v.string(),
      name: v.string(),
      /** Whole-car looks carry shares and seen-together; close looks only borders and widths. */
      isWhole: v.boolean(),
      weight: size,
      azimuthDegrees: v.number(),
      elevationDegrees: v.number(),
    }),
  ),
  parts: v.array(
    v.strictObject({
      id: v.string(),
      name: v.string(),
      role: v.picklist(roles),
      group: v.picklist(groups),
      /** The finish of a given part where the build does not say: Lab D65 and GU60. */
      given: v.optional(
        v.strictObject({
          lab: v.tuple([v.number(), v.number(), v.number()]),
          gloss60: size,
          /** Bare metal, which pairs with other metal as a matter of course. */
          isMetal: v.optional(v.boolean()),
        }),
      ),
      /** Id of a part without which this one is not there: glass and stalk go with the mirror. */
      goesWith: v.optional(v.string()),
      /** Projected visible area in each look, mm², split by zone: areaMm2[zone][look]. */
      areaMm2: v.record(v.string(), v.array(size)),
      /** Smallest visible dimension, mm; null where it is over 10 mm at 1:24 (240 mm full size). */
      thicknessMm: v.nullable(size),
    }),
  ),
  /** Visible border of each pair of parts, mean over looks by weight; each pair once, a < b. */
  borders: v.array(
    v.strictObject({
      a: v.string(),
      b: v.string(),
      lengthMm: size,
      /** Share 0–1 of that border where the two surfaces really touch (depth step < 50 mm). */
      touching: size,
    }),
  ),
});
export type SightTable = v.InferOutput<typeof sightTableSchema>;
export type SightPart = SightTable['parts'][number];
export type SightLook = SightTable['looks'][number];
