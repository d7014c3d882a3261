/** What has one viewer said? The letter, parts by letter, pairs that were put, and their own words. */

/** Longest words of a viewer, UTF-16 units; longer ones are cut between characters. */
export const longestWords = 500;

/** One pair as it was put: of two letters, the one that was chosen. */
export interface Pair {
  readonly chosen: string;
  readonly over: string;
}

/** An answer to a round. */
export interface Answer {
  /** Letter of the alternative chosen. */
  readonly letter: string;
  /** Letter chosen for a part, by part id of the round's build; parts not answered are absent. */
  readonly parts: Readonly<Record<string, string>>;
  /** Pairs in the order they were put; empty where all were seen at once. */
  readonly pairs: readonly Pair[];
  /** The viewer’s words in one line, as `wordsFrom` in `reply/words` leaves them; empty where none. */
  readonly words: string;
}
