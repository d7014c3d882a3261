/**
 * May this stand in a rack? The one door through which an edited finish goes: the schema of racks,
 * hidden characters, and what a schema cannot see.
 *
 * In: a finish as a form made it. Out: every fault, none where it may stand. A finish that passes
 * is accepted by `parseRack` in a rack where its id is free.
 */
import * as v from 'valibot';
import { type Problem, shown } from '../../ground/problem.ts';
import { type Finish, finishSchema } from '../finish.ts';
import { hasHidden, problemsFrom } from '../parse.ts';
import { finishFaults } from '../rack/rack.ts';

/** Faults of an edited finish. */
export function faultsOf(finish: Finish): Problem[] {
  const result = v.safeParse(finishSchema, finish);
  if (!result.success) return problemsFrom(result.issues);
  const hidden = textsOf(finish).filter(([, text]) => hasHidden(text));
  return [
    ...hidden.map(([place, text]) => ({
      place,
      found: shown(text),
      expected: 'text without control or direction-changing characters',
      mend: 'Type the text afresh; such characters often come along when text is pasted.',
    })),
    ...finishFaults(finish, ''),
  ];
}

/** The first fault as the words beneath a field; undefined where there is none. */
export function faultIn(finish: Finish): string | undefined {
  const [first] = faultsOf(finish);
  return first === undefined
    ? undefined
    : `found ${first.found}; expected ${first.expected}. ${first.mend}`;
}

const textsOf = (finish: Finish): (readonly [place: string, text: string])[] =>
  [
    ['name', finish.name] as const,
    ['note', finish.note] as const,
    ['provenance › note', finish.provenance.note] as const,
    ['bottle › name', finish.bottle?.name] as const,
    ['clear › name', finish.clear?.name] as const,
    ['clear › bottle › name', finish.clear?.bottle?.name] as const,
    ...finish.undercoats.flatMap((film, at) => [
      [`undercoats › ${at + 1} › name`, film.name] as const,
      [`undercoats › ${at + 1} › bottle › name`, film.bottle?.name] as const,
    ]),
  ].flatMap(([place, text]) => (text === undefined ? [] : [[place, text] as const]));
