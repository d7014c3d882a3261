/**
 * The worker that ranks: a question in; out the best so far while the search goes on, the ranking it
 * ends with, then what there is to say about it; or in words why nothing can be ranked.
 */
import type { Build } from '../../build/build.ts';
import type { SightTable } from '../../car/table.ts';
import { InputError, type Problem } from '../../ground/problem.ts';
import { rankBuild } from '../../ranking/rank.ts';
import type { Ranking, Wanted } from '../../ranking/ranking.ts';

export interface ToSearch {
  readonly build: Build;
  readonly sight: SightTable;
  readonly wanted: Wanted;
}

export type Told =
  | { readonly kind: 'so-far'; readonly ranking: Ranking }
  | { readonly kind: 'found'; readonly ranking: Ranking }
  | { readonly kind: 'refused'; readonly problems: readonly Problem[] };

/** The page hears of better rows this often at most, ms. */
const everyMs = 250;

const tell = (told: Told): void => self.postMessage(told);

function search({ build, sight, wanted }: ToSearch): void {
  let last = performance.now();
  const ranking = rankBuild(build, sight, wanted, {
    tell(soFar) {
      const now = performance.now();
      if (now - last < everyMs) return;
      last = now;
      tell({ kind: 'so-far', ranking: soFar });
    },
  });
  tell({ kind: 'found', ranking });
}

self.addEventListener('message', ({ data }: MessageEvent<ToSearch>) => {
  try {
    search(data);
  } catch (fault) {
    if (!(fault instanceof InputError)) throw fault;
    tell({ kind: 'refused', problems: fault.problems });
  }
});
