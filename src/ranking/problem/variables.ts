/**
 * What does the network choose? One variable for each slot with more than one finish left, and for
 * every surface of the scene the variable that decides it, or the one finish it wears anyway.
 */
import type { FinishRef } from '../../build/build.ts';
import type { Judged } from '../../score/judged.ts';
import type { Slot } from './slots.ts';

export interface Variables {
  /** Slots with a choice, in the order of the network's variables. */
  readonly slots: readonly Slot[];
  /** Slots whose one finish is certain. */
  readonly certain: readonly Slot[];
  readonly sizes: readonly number[];
  /** Variable that decides each surface; -1 where it is certain. */
  readonly of: Int32Array;
  /**
   * Position among the candidates of surface k under value a of its variable, at [k][a]; at [k][0]
   * where it is certain.
   */
  readonly candidateOf: readonly Int32Array[];
  /** Where a part is decided; undefined where it is no part on the model. */
  placeOf(part: string): Place | undefined;
}

/** The variable of a part, -1 where it is certain, and its finishes. */
export interface Place {
  readonly variable: number;
  readonly refs: readonly FinishRef[];
}

/** Variables for the slots of a build that is laid out. */
export function variablesOf({ terms }: Judged, all: readonly Slot[]): Variables {
  const slots = all.filter(({ refs }) => refs.length > 1);
  const certain = all.filter(({ refs }) => refs.length <= 1);
  const places = new Map<string, Place>();
  const tell = (list: readonly Slot[], variableOf: (at: number) => number): void =>
    list.forEach(({ parts, refs }, at) => {
      for (const { id } of parts) places.set(id, { variable: variableOf(at), refs });
    });
  tell(slots, (at) => at);
  tell(certain, () => -1);
  const { surfaces } = terms.scene;
  const placed = surfaces.map(({ id, given }) => (given === undefined ? places.get(id)! : nobody));
  return {
    slots,
    certain,
    sizes: slots.map(({ refs }) => refs.length),
    of: Int32Array.from(placed, ({ variable }) => variable),
    candidateOf: placed.map(({ refs }, at) => {
      const positions = new Map(terms.candidates[at]!.map(({ worn }, c) => [worn.ref, c]));
      return surfaces[at]!.given === undefined
        ? Int32Array.from(refs, (ref) => positions.get(ref)!)
        : Int32Array.of(0);
    }),
    placeOf: (part) => places.get(part),
  };
}

/** A surface that nobody chooses. */
const nobody: Place = { variable: -1, refs: [] };
