/**
 * What a builder can say of one finish, as it stands in racks and build files. The schema is the
 * single source of the type, of validation and of the published JSON Schema.
 *
 * Colours may be sRGB, Lab with its light, or a spectrum; gloss is GU at 60° (ISO 2813) of the
 * outermost dried surface; uncertainty is an RMS CIEDE2000. [ISO2813]
 */
import * as v from 'valibot';
import { lightIds } from '../colour/illuminant.ts';
import { longestName } from '../ground/id.ts';

/** Longest note that is kept; longer text is refused so that screens stay readable. */
export const longestNote = 2000;

const finite = (low: number, high: number) => v.pipe(v.number(), v.minValue(low), v.maxValue(high));

export const idSchema = v.pipe(
  v.string(),
  v.regex(/^[a-z0-9]+(-[a-z0-9]+)*$/, 'lower-case letters, digits and single hyphens'),
  v.maxLength(60),
);
export const nameSchema = v.pipe(
  v.string(),
  v.regex(/^[^\r\n\t]*\S[^\r\n\t]*$/, 'one line of text, not blank'),
  v.maxLength(longestName),
);

export const lightSchema = v.picklist(lightIds);

export const colourSchema = v.union([
  v.strictObject({
    srgb: v.pipe(v.string(), v.regex(/^#[0-9a-fA-F]{6}$/, 'a colour like #1a2b3c')),
  }),
  v.strictObject({
    lab: v.tuple([finite(0, 100), finite(-160, 160), finite(-160, 160)]),
    light: v.optional(v.picklist(['D65', 'D50']), 'D65'),
  }),
  v.strictObject({
    spectrum: v.strictObject({
      nm: v.pipe(v.array(finite(300, 900)), v.minLength(8), v.maxLength(601)),
      reflectance: v.pipe(v.array(finite(0, 1.5)), v.minLength(8), v.maxLength(601)),
    }),
  }),
]);
/** A colour as given: sRGB hex, Lab (its white D65 or D50), or a reflectance spectrum. */
export type Colour = v.InferOutput<typeof colourSchema>;

export const paintEffects = ['solid', 'metallic', 'pearl', 'candy', 'clear'] as const;
export const materialEffects = [
  'ribbon',
  'flock',
  'rubber',
  'foil',
  'leather',
  'bare-metal',
  'lens',
] as const;
export const effects = [...paintEffects, ...materialEffects] as const;
/** What sort of surface it is: a paint effect, or a material that is not painted. */
export type Effect = (typeof effects)[number];

export const chemistries = ['lacquer', 'acrylic', 'enamel', 'urethane', 'none'] as const;
/** Paint chemistry class: acrylic lacquer, water-based acrylic, enamel, two-part urethane, none. */
export type Chemistry = (typeof chemistries)[number];
const chemistrySchema = v.picklist(chemistries);

export const bottleSchema = v.strictObject({
  id: idSchema,
  name: nameSchema,
  onHand: v.boolean(),
  leadDays: v.optional(finite(0, 365), 0),
});
/** One thing to have on the shelf: a bottle, can or roll. Shared bottles share their id. */
export type Bottle = v.InferOutput<typeof bottleSchema>;

export const undercoatSchema = v.strictObject({
  name: nameSchema,
  role: v.picklist(['primer', 'base']),
  effect: v.picklist(['solid', 'metallic']),
  colour: colourSchema,
  chemistry: chemistrySchema,
  coats: v.optional(v.pipe(v.number(), v.integer(), v.minValue(1), v.maxValue(20)), 1),
  bottle: v.optional(bottleSchema),
});
export type Undercoat = v.InferOutput<typeof undercoatSchema>;

export const clearCoatSchema = v.strictObject({
  name: nameSchema,
  chemistry: chemistrySchema,
  coats: v.optional(v.pipe(v.number(), v.integer(), v.minValue(1), v.maxValue(20)), 2),
  /** Colour of white seen through all its coats; absent for a plain clear. */
  tint: v.optional(colourSchema),
  bottle: v.optional(bottleSchema),
});

export const provenanceSchema = v.strictObject({
  how: v.picklist(['measured', 'photo', 'swatch', 'guess']),
  /** RMS CIEDE2000 between the stated and the real colour; absent: the usual for `how`. */
  deltaE: v.optional(finite(0, 30)),
  note: v.optional(v.pipe(v.string(), v.maxLength(longestNote))),
});
export type Provenance = v.InferOutput<typeof provenanceSchema>;

export const finishSchema = v.strictObject({
  id: idSchema,
  name: nameSchema,
  effect: v.picklist(effects),
  /**
   * Solid and materials: the dried look. Metallic and pearl: the look at 45° from the mirror
   * direction. Candy and tinted clear: white seen through `coats` coats.
   */
  colour: colourSchema,
  /** Metallic and pearl: near the mirror direction (face) and far from it (flop), if known. */
  face: v.optional(colourSchema),
  flop: v.optional(colourSchema),
  /** Metallic and pearl: flop index where face and flop were not recorded; 0 flat, 15–17 strong. */
  flopIndex: v.optional(finite(0, 30)),
  /** GU at 60° of the dried outermost surface, clear coat included. */
  gloss60: finite(0, 100),
  /** GU at 60° of the sample the colour was taken from; absent: the same as `gloss60`. */
  sampleGloss60: v.optional(finite(0, 100)),
  coats: v.optional(v.pipe(v.number(), v.integer(), v.minValue(1), v.maxValue(20)), 1),
  chemistry: v.optional(chemistrySchema, 'none'),
  undercoats: v.optional(v.pipe(v.array(undercoatSchema), v.maxLength(6)), []),
  clear: v.optional(clearCoatSchema),
  provenance: provenanceSchema,
  bottle: v.optional(bottleSchema),
  note: v.optional(v.pipe(v.string(), v.maxLength(longestNote))),
});
/** One finish: what the eye meets once everything is dry, and the films that make it. */
export type Finish = v.InferOutput<typeof finishSchema>;

/** Whether the finish holds aligned flake that turns with the light. */
export const isFlake = (finish: Pick<Finish, 'effect'>): boolean =>
  finish.effect === 'metallic' || finish.effect === 'pearl' || finish.effect === 'candy';

/** Whether the finish is a woven or flocked cloth, or leather-like: never glossy by intent. */
export const isCloth = (finish: Pick<Finish, 'effect'>): boolean =>
  finish.effect === 'ribbon' || finish.effect === 'flock';

/** Whether the surface is bare or foil metal rather than paint. */
export const isBareMetal = (finish: Pick<Finish, 'effect'>): boolean =>
  finish.effect === 'foil' || finish.effect === 'bare-metal';

/** Every bottle the finish needs, bottom film first, each id once. */
export const bottlesOf = (finish: Finish): Bottle[] => [
  ...new Map(everyBottle(finish).map((bottle) => [bottle.id, bottle])).values(),
];

const everyBottle = (finish: Finish): Bottle[] =>
  [...finish.undercoats.map((film) => film.bottle), finish.bottle, finish.clear?.bottle].filter(
    (bottle) => bottle !== undefined,
  );

/** The finish with its bottles told as `told` has them, by id; the same object where nothing changes. */
export function withBottles<Kind extends Finish>(
  finish: Kind,
  told: ReadonlyMap<string, Bottle>,
): Kind {
  const isNew = (bottle: Bottle): boolean => {
    const now = told.get(bottle.id) ?? bottle;
    return (
      now.name !== bottle.name || now.onHand !== bottle.onHand || now.leadDays !== bottle.leadDays
    );
  };
  if (!everyBottle(finish).some(isNew)) return finish;
  const as = <Film extends { bottle?: Bottle | undefined }>(film: Film): Film => {
    const bottle = told.get(film.bottle?.id ?? '');
    return bottle === undefined ? film : { ...film, bottle };
  };
  return {
    ...as(finish),
    undercoats: finish.undercoats.map(as),
    ...(finish.clear && { clear: as(finish.clear) }),
  };
}
