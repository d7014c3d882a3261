/**
 * What can be done by its name? One thing to do or to go to, as the command search lists it. Made
 * afresh from the stores each time the search opens, so that it never speaks of what has gone.
 */
import type { EmbeddedFinish } from '../../build/build.ts';

/** What a command is about, as it stands at the end of its line. */
export type Kind =
  | 'alternative'
  | 'build'
  | 'distance'
  | 'file'
  | 'finish'
  | 'light'
  | 'page'
  | 'part'
  | 'rule'
  | 'spoons'
  | 'view'
  | 'work';

interface Named {
  /** The same from one opening to the next, so that what was used lately can be remembered. */
  readonly id: string;
  readonly name: string;
  readonly kind: Kind;
  /** How things stand now, beneath the name. */
  readonly note?: string;
  /** Other words it is found by. */
  readonly also?: string;
  /** Keys that do the same. */
  readonly keys?: string;
  /** The finish it is about, shown as a sprayed bowl. */
  readonly finish?: EmbeddedFinish;
  /** Only to be found by words: one of very many. */
  readonly isDeep?: boolean;
}

/** A list to choose from in turn. */
export interface Further {
  readonly title: string;
  readonly commands: readonly Command[];
}

export type Command = Named & ({ readonly run: () => void } | { readonly further: () => Further });

/** Words written from right to left, which must not turn the words around them. */
const turned = /[\u0590-\u08ff\ufb1d-\ufdff\ufe70-\ufefc]/;

/** A builder's name, kept apart from the direction of the words around it. */
export const apart = (name: string): string => (turned.test(name) ? `\u2068${name}\u2069` : name);
