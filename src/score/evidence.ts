/**
 * What a score rests on. Evidence is structured (kind, parts, numbers with units) and becomes
 * words only in `sentence.ts`, so terminal, page and files say the same.
 */
export const scoreKeys = [
  'contrast',
  'accent',
  'sheen',
  'harmony',
  'steadiness',
  'readiness',
] as const;
/** The six scores. `harmony` keeps its key in files; on screen it is called *kept apart*. */
export type ScoreKey = (typeof scoreKeys)[number];

export interface Quantity {
  readonly value: number;
  /** `mm`, `ΔL*`, `ΔE2000`, `GU60`, `%`, `days`, `bottles`, `of 100 views`, … */
  readonly unit: string;
}

export interface Evidence {
  readonly score: ScoreKey;
  /** Which finding it is, for example `lost`, `orphan`, `near-miss`; see `sentence.ts` for all. */
  readonly kind: string;
  /** Build part ids that light up when it is pointed at. */
  readonly parts: readonly string[];
  readonly numbers: Readonly<Record<string, Quantity>>;
  /** Names the sentence needs: parts, finishes, zones, families. */
  readonly words: Readonly<Record<string, string>>;
  /** What it costs, in halvings of the score before κ; 0 for praise and remarks. */
  readonly cost: number;
}
