/**
 * How does a part stand, and what would it mean if it stood otherwise? The four standings in the
 * builder's words, and the edit that brings a part into each.
 */
import { type Build, type FinishRef, isOpen, type Part } from '../../build/build.ts';
import { openPart, setAbsent, settlePart } from '../../build/edit/part.ts';

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

/** Brings a part into a standing; one that is not on the model keeps what it was for later. */
export function bring(build: Build, id: string, standing: Standing): Build {
  if (standing === 'absent') return setAbsent(build, id, true);
  const there = setAbsent(build, id, false);
  return standing === 'open' ? openPart(there, id) : settlePart(there, id, standing === 'painted');
}

/** The finish that most parts of the build are settled on, or may wear. */
export function commonest(build: Build): FinishRef {
  const counts = new Map<FinishRef, number>();
  for (const part of build.parts) {
    for (const ref of isOpen(part) ? part.candidates : [part.finish]) {
      counts.set(ref, (counts.get(ref) ?? 0) + 1);
    }
  }
  return [...counts].sort(([, one], [, other]) => other - one)[0]?.[0] ?? '';
}

/** Names of parts of the car, by their ids. */
export const carPartNames = (
  parts: readonly { readonly id: string; readonly name: string }[],
): ((id: string) => string) => {
  const names = new Map(parts.map(({ id, name }) => [id, name]));
  return (id) => names.get(id) ?? id;
};
