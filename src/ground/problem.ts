/**
 * What is wrong with an input, where, and how to mend it. Every room reports bad input in this
 * one shape, so that terminal and page can show it the same way.
 */
export interface Problem {
  /** Where in the input, in the builder's terms: `parts › belts › candidates › 2`, `row 14`. */
  readonly place: string;
  /** What stands there, shortened to a readable length and made harmless. */
  readonly found: string;
  /** What would have been right. */
  readonly expected: string;
  /** What the builder can do about it. */
  readonly mend: string;
}

/** Thrown where an input cannot be used; carries every problem found, not just the first. */
export class InputError extends Error {
  readonly problems: readonly Problem[];
  /** The file or link the input came from, where known. */
  readonly source: string | undefined;

  constructor(problems: readonly Problem[], source?: string) {
    super(problems.map((problem) => problemSentence(problem)).join('\n'));
    this.name = 'InputError';
    this.problems = problems;
    this.source = source;
  }
}

/** One problem as one sentence: place, what was found, what was expected, how to mend it. */
export function problemSentence({ place, found, expected, mend }: Problem): string {
  const where = place === '' ? '' : `${place}: `;
  return `${where}found ${found}; expected ${expected}. ${mend}`;
}

const longestShown = 60;
// Control characters and the bidirectional overrides that could reorder a message on screen.
const invisible = /[\p{Cc}\p{Cs}\u061c\u200e\u200f\u2028\u2029\u202a-\u202e\u2066-\u2069\ufeff]/gu;

/** Any input value as short, harmless text for a message: quoted, escaped, at most 60 characters. */
export function shown(value: unknown): string {
  if (value === undefined) return 'nothing';
  if (typeof value === 'number' || typeof value === 'boolean' || value === null) {
    return String(value);
  }
  if (Array.isArray(value)) return `a list of ${value.length}`;
  if (typeof value === 'object') return 'an object';
  const text = String(value).slice(0, longestShown + 1);
  const clean = text.replace(
    invisible,
    (character) => `\\u${character.codePointAt(0)!.toString(16).padStart(4, '0')}`,
  );
  return clean.length > longestShown ? `“${clean.slice(0, longestShown)}…”` : `“${clean}”`;
}
