/** A finish a surface may wear, and what it takes to have it there. */
import type { Worn } from './worn.ts';

/** What it takes to have one finish on one part. */
export interface Preparation {
  /** Ids of the bottles to buy. */
  readonly toBuy: readonly string[];
  /** Days from today until it has cured, lead days of its bottles included. */
  readonly days: number;
  /** The part is painted in something else already and would be stripped. */
  readonly strips: boolean;
}

/** Nothing to buy, nothing to wait for: given surfaces and paint that is on already. */
export const nothingToDo: Preparation = { toBuy: [], days: 0, strips: false };

export interface Candidate {
  readonly worn: Worn;
  readonly preparation: Preparation;
}
