/**
 * One model under way, as its file describes it: the car, its parts and their finishes, what is
 * settled and what is open, the rules that link open choices, and the alternatives to compare.
 *
 * A build embeds every finish it uses, so one file is enough anywhere. Finishes are referred to
 * as `rack/finish`.
 */
import * as v from 'valibot';
import { finishSchema, idSchema, lightSchema, nameSchema } from '../finish/finish.ts';
import { pickedForm } from '../finish/text/form.ts';
import { nearestWord } from './nearest.ts';

/** Version 2 tells which parts are not on the model (`absent`). */
export const buildVersion = 2;

/** `rack/finish`, the key of an embedded finish. */
export const finishRefSchema = v.pipe(
  v.string(),
  v.regex(/^[a-z0-9]+(-[a-z0-9]+)*\/[a-z0-9]+(-[a-z0-9]+)*$/),
  v.maxLength(121),
);
export type FinishRef = string;

/** A finish as it stands in a build file, with the rack it came from. */
export const embeddedFinishSchema = v.strictObject({ rack: idSchema, ...finishSchema.entries });
export type EmbeddedFinish = v.InferOutput<typeof embeddedFinishSchema>;
export const refOf = (finish: EmbeddedFinish): FinishRef => `${finish.rack}/${finish.id}`;

export const dateSchema = v.pipe(v.string(), v.isoDate());
const limit = (high: number) => v.pipe(v.number(), v.integer(), v.minValue(0), v.maxValue(high));
const partRef = idSchema;

const partBase = {
  id: idSchema,
  name: nameSchema,
  /** Parts of the car that this part of the build covers, by the ids of its sight table. */
  covers: v.pipe(v.array(idSchema), v.minLength(1), v.maxLength(40)),
  /** Not on this model: neither seen nor scored, kept in case it turns up. */
  absent: v.optional(v.boolean(), false),
};
const partForms = v.union([
  v.strictObject({
    ...partBase,
    finish: finishRefSchema,
    /** The paint is on the model already: changing it means stripping. */
    painted: v.optional(v.boolean(), false),
  }),
  v.strictObject({
    ...partBase,
    candidates: v.pipe(v.array(finishRefSchema), v.minLength(1), v.maxLength(500)),
  }),
]);
const [settledForm, openForm] = [0, 1];
export const partSchema = pickedForm(partForms, (value) => {
  const fields = typeof value === 'object' && value !== null ? Object.keys(value) : [];
  if (fields.includes('candidates')) return openForm;
  if (fields.includes('finish')) return settledForm;
  // The field that tells the two apart may be the misspelt one.
  const meant = (name: string): boolean =>
    fields.some((field) => nearestWord(field.toLowerCase(), [name]) === name);
  return meant('candidates') ? openForm : meant('finish') ? settledForm : undefined;
});
/** A visible region that wears one finish: settled (`finish`) or open (`candidates`). */
export type Part = v.InferOutput<typeof partSchema>;
export type OpenPart = Extract<Part, { candidates: unknown }>;

const wears = v.strictObject({ part: partRef, finish: finishRefSchema });

export const ruleSchema = v.variant('kind', [
  /** All of these wear one finish. */
  v.strictObject({ kind: v.literal('same'), parts: v.pipe(v.array(partRef), v.minLength(2)) }),
  /** If one part wears this finish, another wears one of these. */
  v.strictObject({
    kind: v.literal('if-then'),
    when: wears,
    wants: v.strictObject({
      part: partRef,
      oneOf: v.pipe(v.array(finishRefSchema), v.minLength(1)),
    }),
  }),
  /** These two choices never together. */
  v.strictObject({ kind: v.literal('never-together'), first: wears, second: wears }),
  /** The colour of this part must show again in another zone. */
  v.strictObject({ kind: v.literal('must-echo'), part: partRef }),
  /** At most so many bottles to buy. */
  v.strictObject({ kind: v.literal('most-new-bottles'), count: limit(1000) }),
  /** At most so many different finishes over the parts of the build. */
  v.strictObject({ kind: v.literal('most-finishes'), count: limit(1000) }),
  /** Everything bought, sprayed and cured by this date. */
  v.strictObject({ kind: v.literal('ready-by'), date: dateSchema }),
  /** The colour of this part takes at most this share of the visible car, percent. */
  v.strictObject({
    kind: v.literal('most-share'),
    part: partRef,
    percent: v.pipe(v.number(), v.finite(), v.minValue(0), v.maxValue(100)),
  }),
]);
/** What links open choices. */
export type Rule = v.InferOutput<typeof ruleSchema>;

export const alternativeSchema = v.strictObject({
  id: idSchema,
  name: nameSchema,
  note: v.optional(v.pipe(v.string(), v.maxLength(2000))),
  /**
   * Finish of every open part, by part id. A settled part keeps its finish unless it is named
   * here, which for a painted part means stripping it.
   */
  choices: v.record(idSchema, finishRefSchema),
});
export type Alternative = v.InferOutput<typeof alternativeSchema>;

const weight = v.pipe(v.number(), v.finite(), v.minValue(0), v.maxValue(1000));
export const weightsSchema = v.pipe(
  v.strictObject({
    contrast: weight,
    accent: weight,
    sheen: weight,
    harmony: weight,
    steadiness: weight,
    readiness: weight,
  }),
  v.check(
    (weights) => Object.values(weights).some((one) => one > 0),
    'at least one weight above 0, since only their proportions matter',
  ),
);
/** How much each score counts in the overall; only their proportions matter. */
export type Weights = v.InferOutput<typeof weightsSchema>;
/** Our judgement, see DEVELOPERS.md; the builder may change them. */
export const defaultWeights: Weights = {
  contrast: 25,
  accent: 25,
  sheen: 20,
  harmony: 10,
  steadiness: 10,
  readiness: 10,
};

export const buildSchema = v.strictObject({
  $schema: v.optional(v.pipe(v.string(), v.maxLength(300))),
  format: v.literal('testspoon-build'),
  version: v.literal(buildVersion),
  id: idSchema,
  name: nameSchema,
  story: v.optional(v.pipe(v.string(), v.maxLength(2000))),
  /** Car id: a car in `models/`. */
  car: idSchema,
  /** 24 for 1:24. */
  scale: v.pipe(v.number(), v.finite(), v.minValue(1), v.maxValue(200)),
  viewing: v.strictObject({
    distanceMm: v.pipe(v.number(), v.finite(), v.minValue(50), v.maxValue(20000)),
    light: lightSchema,
  }),
  /** The date the builder wants it finished by. */
  wantedBy: v.optional(dateSchema),
  weights: v.optional(weightsSchema, defaultWeights),
  /** A deliberately close, one-colour scheme: low contrast is meant. */
  tonal: v.optional(v.boolean(), false),
  /** Parts that must be told from their neighbours, even where they wear the same finish. */
  mustRead: v.optional(v.array(partRef), []),
  finishes: v.pipe(v.array(embeddedFinishSchema), v.maxLength(10000)),
  parts: v.pipe(v.array(partSchema), v.minLength(1), v.maxLength(200)),
  rules: v.optional(v.pipe(v.array(ruleSchema), v.maxLength(500)), []),
  alternatives: v.pipe(v.array(alternativeSchema), v.maxLength(100)),
});
export type Build = v.InferOutput<typeof buildSchema>;

export const isOpen = (part: Part): part is OpenPart => 'candidates' in part;

const byRef = new WeakMap<Build['finishes'], ReadonlyMap<FinishRef, EmbeddedFinish>>();

/** Every embedded finish by its `rack/finish` reference; the same map for the same finishes. */
export function finishesByRef(
  build: Pick<Build, 'finishes'>,
): ReadonlyMap<FinishRef, EmbeddedFinish> {
  const known = byRef.get(build.finishes);
  if (known !== undefined) return known;
  const found = new Map(build.finishes.map((finish) => [refOf(finish), finish]));
  byRef.set(build.finishes, found);
  return found;
}

/** Finish of every part on the model under one alternative, by part id. */
export function assignmentOf(
  build: Pick<Build, 'parts'>,
  alternative: Alternative,
): Map<string, FinishRef> {
  return new Map(
    build.parts.flatMap((part) =>
      part.absent ? [] : [[part.id, alternative.choices[part.id] ?? usualFinish(part)] as const],
    ),
  );
}

/** What a part wears where an alternative says nothing: the settled finish, or the first candidate. */
export const usualFinish = (part: Part): FinishRef =>
  isOpen(part) ? part.candidates[0]! : part.finish;

/** Neutral letter of the alternative at `position` (0 → A, 26 → AA). */
export function letterOf(position: number): string {
  const last = String.fromCharCode(65 + (position % 26));
  return position < 26 ? last : letterOf(Math.floor(position / 26) - 1) + last;
}
