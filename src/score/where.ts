/**
 * Where else does this colour appear? For any part: every part of its family, in which zones, how
 * large, and how often two of its places are seen together.
 */
import { placeInWords } from './finding/accent.ts';
import { figure } from './finding/figure.ts';
import { inWords } from './finding/scheme.ts';
import { type Judged, showingFor } from './judged.ts';

export interface Elsewhere {
  /** Everyday word for the family. */
  readonly family: string;
  /** Build parts that wear the family, the asked one included. */
  readonly parts: readonly string[];
  readonly sharePercent: number;
  /** Looks of 100, by weight, in which two of its zones are seen at once. */
  readonly togetherIn100: number;
  readonly sentence: string;
}

/** Answers for one part under one choice; undefined for parts the car does not show. */
export function whereElse(
  judged: Judged,
  choice: ArrayLike<number>,
  part: string,
): Elsewhere | undefined {
  const { terms } = judged;
  const shown = showingFor(terms, choice, part);
  if (shown === undefined) return undefined;
  const { surfaces } = terms.scene;
  const family = terms.families[shown.family]!.name;
  const others = shown.surfaces.filter((at) => surfaces[at]!.id !== part);
  const share = `${figure(shown.sharePercent, 1)} % of the car`;
  const togetherIn100 = 100 * shown.together;
  const sentence =
    others.length === 0
      ? `${family} appears nowhere else: ${share}, ${placeInWords(shown.zones)}.`
      : `${family} appears again on ${inWords(others.map((at) => surfaces[at]!.name))}: ${share}, ` +
        (shown.zones.length < 2
          ? `all of it ${placeInWords(shown.zones)}.`
          : `two zones of it seen at once in ${figure(togetherIn100)} of 100 looks.`);
  return {
    family,
    parts: shown.surfaces.map((at) => surfaces[at]!.id),
    sharePercent: shown.sharePercent,
    togetherIn100,
    sentence: sentence.charAt(0).toUpperCase() + sentence.slice(1),
  };
}
