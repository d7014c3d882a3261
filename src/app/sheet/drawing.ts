/** The worker that makes the draws: a build, its car and the day in, the whole comparison out. */
import type { Build } from '../../build/build.ts';
import type { SightTable } from '../../car/table.ts';
import { compareAlternatives } from '../../score/sheet.ts';

export interface ToDraw {
  readonly build: Build;
  /** Sent where it is another than before. */
  readonly sight: SightTable | undefined;
  /** ISO date. */
  readonly today: string;
}

let known: SightTable;

self.addEventListener('message', ({ data: { build, sight, today } }: MessageEvent<ToDraw>) => {
  known = sight ?? known;
  self.postMessage(compareAlternatives(build, known, { today }));
});
