/** One scheme laid out for finding reasons: its terms, its choice, and what each surface wears. */
import type { Evidence, Quantity, ScoreKey } from '../evidence.ts';
import type { Surface } from '../seen/scene.ts';
import type { Worn } from '../seen/worn.ts';
import type { Reading } from '../six/contrast.ts';
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
  // A part may itself be called “sills and trim”; then only semicolons keep the list apart.
  if (names.some((name) => name.includes(' and '))) return names.join('; ');
  return `${names.slice(0, -1).join(', ')} ${joint} ${names[names.length - 1]}`;
}

/** Readings of one feature that found the same thing, costliest first. */
export interface Gathered<Kind> {
  readonly feature: number;
  readonly kind: Kind;
  readonly neighbours: readonly number[];
  /** The reading that costs most, or comes first where none costs. */
  readonly worst: Reading;
  readonly cost: number;
}

/** Gathers readings by feature and finding, so that one part gets one sentence for one fault. */
export function gathered<Kind extends string>(
  readings: readonly Reading[],
  judge: (reading: Reading) => { kind: Kind; cost: number } | undefined,
): Gathered<Kind>[] {
  const groups = new Map<string, { reading: Reading; kind: Kind; cost: number }[]>();
  for (const reading of readings) {
    const found = judge(reading);
    if (found === undefined) continue;
    const key = `${reading.feature} ${found.kind}`;
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [{ reading, ...found }]);
    else group.push({ reading, ...found });
  }
  return [...groups.values()].map((group) => {
    const sorted = [...group].sort((one, other) => other.cost - one.cost);
    return {
      feature: sorted[0]!.reading.feature,
      kind: sorted[0]!.kind,
      neighbours: sorted.map(({ reading }) => reading.neighbour),
      worst: sorted[0]!.reading,
      cost: sorted.reduce((sum, { cost }) => sum + cost, 0),
    };
  });
}
