/**
 * How does a part stand, and what would it mean if it stood otherwise? The four standings in the
 * builder's words.
 */
import { isOpen, type Part } from '../../build/build.ts';

export type Standing = 'open' | 'settled' | 'painted' | 'absent';

export interface StandingWords {
  readonly standing: Standing;
  readonly name: string;
  readonly means: string;
}

export const standings: readonly StandingWords[] = [
  { standing: 'open', name: 'Open', means: 'not decided yet; alternatives try its candidates.' },
  { standing: 'settled', name: 'Settled', means: 'decided, but no paint is on it yet.' },
  { standing: 'painted', name: 'Painted already', means: 'another finish means stripping it.' },
  { standing: 'absent', name: 'Not on this model', means: 'neither seen nor scored.' },
];

export function standingOf(part: Part): Standing {
  if (part.absent) return 'absent';
  if (isOpen(part)) return 'open';
  return part.painted ? 'painted' : 'settled';
}

/** The standing in the words of the part table: `open · 3 candidates`. */
export function standingWords(part: Part): string {
  if (isOpen(part) && !part.absent) {
    const { length } = part.candidates;
    return `open · ${length} ${length === 1 ? 'candidate' : 'candidates'}`;
  }
  return nameOf(standingOf(part)).toLowerCase();
}

const nameOf = (standing: Standing): string =>
  standings.find((one) => one.standing === standing)?.name ?? standing;
