/**
 * What would mend a finding? A remedy is one to a few parts of one alternative in another finish of
 * the build, with what that would change: told before it is done, and exactly what will be.
 */
import type { Build, FinishRef } from '../../build/build.ts';
import { wearOn } from '../../build/edit/part.ts';
import type { ScoreKey } from '../evidence.ts';

/** One part of an alternative in another finish. */
export interface Change {
  readonly part: string;
  readonly finish: FinishRef;
}

/** What is done, for its words: an accent shown again, a new accent, two parts alike, or a swap. */
export type Way = 'repeat' | 'accent' | 'match' | 'swap';

interface Turn {
  readonly before: number;
  readonly after: number;
}

/** What a remedy changes. */
export interface Effect {
  /** 0–100. */
  readonly overall: Turn;
  /** Each 0–100. */
  readonly scores: Readonly<Record<ScoreKey, Turn>>;
  /** Names of bottles that would have to be bought besides. */
  readonly toBuy: readonly string[];
  /** Names of bottles that would no longer have to be bought. */
  readonly spared: readonly string[];
  /** Days until all has cured, at the earliest. */
  readonly days: Turn;
  /** Ids of the parts that would have to be stripped, and need not be now. */
  readonly strips: readonly string[];
  /** The finding it answers is gone afterwards. */
  readonly clears: boolean;
}

export interface Remedy {
  readonly changes: readonly Change[];
  readonly way: Way;
  /** Id of the part whose finish is taken over, where two are made alike. */
  readonly like: string | undefined;
  readonly effect: Effect;
  /** What it does, as a button says it. */
  readonly label: string;
  /** What it would change, in one line. */
  readonly told: string;
}

/** The build with the changes made to one alternative. */
export const withChanges = (build: Build, alternative: string, changes: readonly Change[]): Build =>
  changes.reduce((now, { part, finish }) => wearOn(now, alternative, part, finish), build);
