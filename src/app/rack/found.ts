/**
 * Which finishes answer what is asked, and how near is each to the colour asked for? The search
 * itself takes a fraction of a frame; the looks that nearness needs are worked out a few
 * milliseconds at a time, so that the page never stalls, and kept.
 */
import { useLayoutEffect, useMemo, useState } from 'react';
import type { EmbeddedFinish } from '../../build/build.ts';
import type { LightId } from '../../colour/illuminant.ts';
import type { Finish } from '../../finish/finish.ts';
import { find, indexOf, type Wanted } from '../../finish/rack/find.ts';
import { nearnessTo, noteLab, unknownLabs } from '../../finish/rack/nearness.ts';
import { lookOf } from '../pieces/look.ts';

export interface Found {
  readonly finishes: readonly EmbeddedFinish[];
  /**
   * ΔE2000 to the colour asked for, by place in `finishes`; undefined where none is, and for the
   * finish itself whose neighbours are asked for.
   */
  readonly deltaE: readonly (number | undefined)[] | undefined;
  /** How many were looked through. */
  readonly among: number;
  /** How many of those are still to be compared with the colour. */
  readonly waiting: number;
}

/** What is found among these finishes; sorted by nearness under this light to `near`, if given. */
export function useFound(
  finishes: readonly EmbeddedFinish[],
  wanted: Omit<Wanted, 'near'>,
  near: Finish | undefined,
  light: LightId,
): Found {
  const index = useMemo(() => indexOf(finishes), [finishes]);
  const looked = useLabs(finishes, light, near !== undefined);
  const { labs, count } = looked;
  const nearness = useMemo(
    () => (near === undefined || count < 0 ? undefined : nearnessTo(lookOf(near, light).lab, labs)),
    [near, light, labs, count],
  );
  const isCurrent = nearness?.deltaE.length === finishes.length;
  return useMemo(() => {
    const usable = near !== undefined && isCurrent ? nearness : undefined;
    const at = find(index, usable === undefined ? wanted : { ...wanted, near: usable });
    return {
      finishes: at.map((place) => finishes[place]!),
      deltaE:
        usable && at.map((place) => (finishes[place] === near ? undefined : usable.deltaE[place])),
      among: finishes.length,
      waiting: near === undefined ? 0 : finishes.length - count,
    };
  }, [index, finishes, wanted, near, nearness, isCurrent, count]);
}

interface Looked {
  readonly finishes: readonly EmbeddedFinish[];
  readonly light: LightId;
  readonly labs: Float64Array;
  /** How many are known, from the first. */
  readonly count: number;
}

/** Looks are worked out for this long at a time, and the list is sorted again this often, ms. */
const turnMs = 8;
const sortingMs = 250;
const nothing = new Float64Array(0);

/** Lab of every finish under a light, more of them known with every turn. */
function useLabs(finishes: readonly EmbeddedFinish[], light: LightId, isWanted: boolean): Looked {
  const [looked, setLooked] = useState<Looked>();
  useLayoutEffect(() => {
    if (!isWanted) return;
    const labs = unknownLabs(finishes.length);
    let count = 0;
    let told = Number.NEGATIVE_INFINITY;
    let later: ReturnType<typeof setTimeout> | undefined;
    const turn = (): void => {
      const start = performance.now();
      while (count < finishes.length && performance.now() - start < turnMs) {
        noteLab(labs, count, lookOf(finishes[count]!, light).lab);
        count += 1;
      }
      if (count === finishes.length || start - told > sortingMs) {
        told = start;
        setLooked({ finishes, light, labs, count });
      }
      if (count < finishes.length) later = setTimeout(turn);
    };
    turn();
    return () => clearTimeout(later);
  }, [finishes, light, isWanted]);
  const isCurrent = looked?.finishes === finishes && looked.light === light;
  return isCurrent ? looked : { finishes, light, labs: nothing, count: 0 };
}
