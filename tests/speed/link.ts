/**
 * How long is the link of the demo, and how long does it take to make one and to open one? The demo
 * with its three alternatives, story left out, nothing asked part by part.
 *
 * Making: from the round to the link. Opening: from the link to the round, pasting undone, all checks
 * made. Medians of many, warm.
 */
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { parseBuild } from '../../src/build/file.ts';
import { linkOf, roundFrom } from '../../src/opinion/link/link.ts';
import { lettersIn, roundOf } from '../../src/opinion/round.ts';
import { frameSeconds } from './change.ts';
import { median, type Row, spent } from './row.ts';

const demoFile = fileURLToPath(new URL('../../src/build/demo.json', import.meta.url));
const warmings = 400;
const times = 400;

/** Characters, and the time to make and to open. */
export async function linkRows(): Promise<Row[]> {
  const build = parseBuild(readFileSync(demoFile, 'utf8'), 'the demo');
  const round = roundOf(build);
  const link = linkOf(round);
  const withStory = linkOf(roundOf(build, { withStory: true }));
  const making = secondsOf(() => linkOf(round));
  const opening = secondsOf(() => roundFrom(link));
  return [
    {
      id: 'link.demo',
      value: link.length,
      unit: 'characters',
      against: 'limit 600',
      note: `the demo, alternatives ${lettersIn(round).join(', ')}; ${withStory.length} with its story`,
    },
    {
      id: 'link.time',
      value: Math.max(making, opening) / frameSeconds,
      unit: 'frames',
      against: 'a frame of 1/60 s on this machine; limit 0.06',
      note: `the slower of making a link, median ${spent(making)}, and opening it, median ${spent(opening)}`,
    },
  ];
}

/** Median seconds of one call, warm. */
function secondsOf(work: () => unknown): number {
  for (let k = 0; k < warmings; k++) work();
  return median(
    Array.from({ length: times }, () => {
      const start = performance.now();
      work();
      return (performance.now() - start) / 1000;
    }),
  );
}
