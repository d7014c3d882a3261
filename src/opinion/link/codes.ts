/**
 * Which words of a finish stand together in one number? Each word by its place in the lists of
 * `words/first`, as digits of mixed base, the coats last: short, and alike for like finishes.
 *
 * In: a finish or film; out: a whole number from 0. And back; undefined where no finish has it.
 */
import type { Finish, Undercoat } from '../../finish/finish.ts';
import { chemistryCodes, effectCodes, provenanceCodes, roleCodes } from './words/first.ts';

/** Numbers from 0 to so many are told apart for coats; the schema ends at 20. */
const coatsBase = 21;

const folded = (digits: readonly (readonly [value: number, base: number])[]): number =>
  digits.reduce((sum, [value, base]) => sum * base + value, 0);

/** Effect, origin, chemistry and coats. */
export const codeOfFinish = ({ effect, provenance, chemistry, coats }: Finish): number =>
  folded([
    [effectCodes.indexOf(effect), effectCodes.length],
    [provenanceCodes.indexOf(provenance.how), provenanceCodes.length],
    [chemistryCodes.indexOf(chemistry), chemistryCodes.length],
    [coats, coatsBase],
  ]);

/** Role and effect of an undercoat, neither of a clear coat; chemistry and coats of both. */
export const codeOfFilm = (film: Undercoat | NonNullable<Finish['clear']>): number =>
  folded([
    ...('role' in film
      ? ([
          [roleCodes.indexOf(film.role), roleCodes.length],
          [effectCodes.indexOf(film.effect), effectCodes.length],
        ] as const)
      : []),
    [chemistryCodes.indexOf(film.chemistry), chemistryCodes.length],
    [film.coats, coatsBase],
  ]);

/** The digits of a number, the last base first; a list one longer than there are bases. */
function unfolded(code: number, bases: readonly number[]): number[] {
  let left = code;
  const digits = bases.map((base) => {
    const digit = left % base;
    left = Math.floor(left / base);
    return digit;
  });
  return [...digits, left];
}

/** What `codeOfFinish` put together. */
export function finishOfCode(code: number) {
  const bases = [coatsBase, chemistryCodes.length, provenanceCodes.length];
  const [coats, chemistry = -1, how = -1, effect = -1] = unfolded(code, bases);
  return {
    effect: effectCodes[effect],
    coats,
    chemistry: chemistryCodes[chemistry],
    how: provenanceCodes[how],
  };
}

/** What `codeOfFilm` put together. */
export function filmOfCode(code: number) {
  const bases = [coatsBase, chemistryCodes.length, effectCodes.length];
  const [coats, chemistry = -1, effect = -1, role = -1] = unfolded(code, bases);
  return {
    role: roleCodes[role],
    effect: effectCodes[effect],
    coats,
    chemistry: chemistryCodes[chemistry],
  };
}
