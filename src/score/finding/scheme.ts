/** One scheme laid out for finding reasons: its terms, its choice, and what each surface wears. */
import type { Evidence, Quantity, ScoreKey } from '../evidence.ts';
import type { Surface } from '../seen/scene.ts';
import type { Worn } from '../seen/worn.ts';
import type { Terms } from '../terms.ts';

export interface Scheme {
  readonly terms: Terms;
  readonly choice: ArrayLike<number>;
  readonly worn: readonly Worn[];
}

/** The scheme in which surface k wears its candidate `choice[k]`. */
export const schemeOf = (terms: Terms, choice: ArrayLike<number>): Scheme => ({
  terms,
  choice,
  worn: terms.wornBy(choice),
});

export const surfaceAt = (scheme: Scheme, at: number): Surface => scheme.terms.scene.surfaces[at]!;

export const quantity = (value: number, unit: string): Quantity => ({ value, unit });

/** Evidence about surfaces: their ids light up, given surfaces included. */
export function evidenceAbout(
  scheme: Scheme,
  score: ScoreKey,
  kind: string,
  at: readonly number[],
  cost: number,
  numbers: Readonly<Record<string, Quantity>> = {},
  words: Readonly<Record<string, string>> = {},
): Evidence {
  return {
    score,
    kind,
    parts: at.map((position) => surfaceAt(scheme, position).id),
    numbers,
    words,
    cost,
  };
}

/** Names of surfaces as a list in words: `mirrors`, `mirrors and belts`, `mirrors, belts and tub`. */
export const namesOf = (scheme: Scheme, at: readonly number[]): string =>
  inWords(at.map((position) => surfaceAt(scheme, position).name));

export function inWords(names: readonly string[], joint = 'and'): string {
  if (names.length < 2) return names[0] ?? '';
  return `${names.slice(0, -1).join(', ')} ${joint} ${names[names.length - 1]}`;
}
