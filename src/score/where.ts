/**
 * Where else does this colour appear? For any part: every part of its family, in which zones, how
 * large, and how often two of its places are seen together.
 */
import { placeInWords } from './finding/accent.ts';
import { figure } from './finding/figure.ts';
import { inWords } from './finding/scheme.ts';
import { type Judged, showingFor } from './judged.ts';
import { familyNamed } from './seen/family.ts';

export interface Elsewhere {
  /** What the colour is called: the finish's own name, or an everyday word for several. */
  readonly family: string;
  /** Build parts that wear the family, the asked one included. */
  readonly parts: readonly string[];
  readonly sharePercent: number;
  /** Views of 100 in which two of its zones are seen at once. */
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
  const worn = terms.wornBy(choice);
  const family = familyNamed(
    terms.families[shown.family]!,
    shown.surfaces.map((at) => worn[at]!),
  );
  const others = shown.surfaces.filter((at) => surfaces[at]!.id !== part);
  const share = `${figure(shown.sharePercent, 1)} % of the car`;
  const togetherIn100 = 100 * shown.together;
  const sentence =
    others.length === 0
      ? `${family} appears nowhere else: ${share}, ${placeInWords(shown.zones)}.`
      : `${family} appears again on ${inWords(others.map((at) => surfaces[at]!.name))}: ${share} ` +
        'in all, ' +
        (shown.zones.length < 2
          ? `every bit of it ${placeInWords(shown.zones)}.`
          : `two of its places seen at once in ${figure(togetherIn100)} of 100 views.`);
  return {
    family,
    parts: shown.surfaces.map((at) => surfaces[at]!.id),
    sharePercent: shown.sharePercent,
    togetherIn100,
    sentence: sentence.charAt(0).toUpperCase() + sentence.slice(1),
  };
}
