/**
 * The worker that looks for remedies: a build, its car and the day in; out come the remedies of one
 * alternative after the other. A newer build ends the search for the one before it.
 */
import type { Build } from '../../../build/build.ts';
import type { SightTable } from '../../../car/table.ts';
import { type Judged, judgeAgain } from '../../../score/judged.ts';
import { remediesFor } from '../../../score/remedy/find.ts';
import type { Remedy } from '../../../score/remedy/remedy.ts';

export interface ToMend {
  /** Counts searches, so that an answer is put to the build it was asked for. */
  readonly run: number;
  readonly build: Build;
  /** Left out where it is the same as in the search before. */
  readonly sight: SightTable | undefined;
  /** ISO date. */
  readonly today: string;
}

export interface Mended {
  readonly run: number;
  readonly alternative: string;
  /** For each finding of the alternative's sheet, in order. */
  readonly remedies: readonly (readonly Remedy[])[];
}

let newest = 0;
let sight: SightTable | undefined;
let judged: Judged | undefined;

async function search({ run, build, today, ...asked }: ToMend): Promise<void> {
  newest = run;
  sight = asked.sight ?? sight;
  if (sight === undefined) return;
  judged = judgeAgain(judged, build, sight, { today });
  const own = judged;
  for (const alternative of build.alternatives) {
    self.postMessage({
      run,
      alternative: alternative.id,
      remedies: remediesFor(own, alternative),
    } satisfies Mended);
    // Lets a newer build in between two alternatives.
    await new Promise((resolve) => setTimeout(resolve));
    if (newest !== run) return;
  }
}

self.addEventListener('message', ({ data }: MessageEvent<ToMend>) => void search(data));
