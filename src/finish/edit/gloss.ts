/**
 * How shiny is it, said as builders say it? By a reading in GU at 60° [ISO2813], by a sheen word,
 * or by the reference spoon that looks the same.
 *
 * A finish in, a finish out, 0–100 GU. The figure behind a word is about the middle of its class
 * [MPI]; that of high gloss lies just under what a film can read (89 GU).
 */
import type { Finish } from '../finish.ts';
import { type SheenClass, sheenClasses } from '../sheen.ts';

/** Most that a film of index 1.5 reads, rounded down; see `sheen`. */
const mirrorFilm = 89;

/** GU at 60° that stands for a sheen class, whole. */
export const glossOfClass = ({ from, to }: SheenClass): number =>
  Math.floor((from + (Number.isFinite(to) ? to : mirrorFilm + 2)) / 2);

/** Readings of a row of reference spoons, dead matt to mirror; about even steps to the eye. */
export const referenceGlosses: readonly number[] = [1, 3, 7, 15, 28, 50, 75, mirrorFilm];

/** The reference spoon nearest to a reading, by steps of the row. */
export function nearestReference(gloss60: number): number {
  const log = (value: number): number => Math.log(value + 1);
  return referenceGlosses.reduce((best, one) =>
    Math.abs(log(one) - log(gloss60)) < Math.abs(log(best) - log(gloss60)) ? one : best,
  );
}

/** Another gloss; the sample the colour was taken from stays as it was told. */
export const setGloss = (finish: Finish, gloss60: number): Finish => ({ ...finish, gloss60 });

/** The gloss of a sheen word, as it stands in `sheenClasses`. */
export const setGlossClass = (finish: Finish, id: string): Finish => {
  const sheen = sheenClasses.find((one) => one.id === id);
  return sheen === undefined ? finish : setGloss(finish, glossOfClass(sheen));
};

/** Gloss of the sample the colour was taken from; undefined where it was as this finish is. */
export function setSampleGloss(finish: Finish, sampleGloss60: number | undefined): Finish {
  const { sampleGloss60: _before, ...rest } = finish;
  return sampleGloss60 === undefined ? rest : { ...rest, sampleGloss60 };
}

export type SampleForm = 'same' | 'glossier' | 'duller';

export const sampleFormOf = ({ gloss60, sampleGloss60 }: Finish): SampleForm =>
  sampleGloss60 === undefined || sampleGloss60 === gloss60
    ? 'same'
    : sampleGloss60 > gloss60
      ? 'glossier'
      : 'duller';

/** A likely gloss of a sample that was told only as glossier or duller: a usual gloss, a usual matt. */
export function likelySampleGloss({ gloss60 }: Finish, form: SampleForm): number | undefined {
  if (form === 'same') return undefined;
  return form === 'glossier' ? Math.max(85, (gloss60 + 100) / 2) : Math.min(8, gloss60 / 2);
}
