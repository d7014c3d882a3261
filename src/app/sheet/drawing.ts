/** The worker that makes the draws: a build, its car and the day in, the whole comparison out. */
import type { Build } from '../../build/build.ts';
import type { SightTable } from '../../car/table.ts';
import { compareAlternatives } from '../../score/sheet.ts';

export interface ToDraw {
  readonly build: Build;
  readonly sight: SightTable;
  /** ISO date. */
  readonly today: string;
}

self.addEventListener('message', ({ data: { build, sight, today } }: MessageEvent<ToDraw>) => {
  self.postMessage(compareAlternatives(build, sight, { today }));
});
