/**
 * How long is the link of the demo, and how long does it take to make one and to open one? The demo
 * with its three alternatives, story left out, nothing asked part by part.
 *
 * Making: from the round to the link. Opening: from the link to the round, pasting undone, all checks
 * made. Medians of many, warm.
 */
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Build } from '../../src/build/build.ts';
import { parseBuild } from '../../src/build/file.ts';
import { drawFrom } from '../../src/ground/draw.ts';
import { linkOf, roundFrom } from '../../src/opinion/link/link.ts';
import { lettersIn, roundOf } from '../../src/opinion/round.ts';
import { frameSeconds } from './change.ts';
import { median, type Row, spent } from './row.ts';

const demoFile = fileURLToPath(new URL('../../src/build/demo.json', import.meta.url));
const warmings = 400;
const times = 400;

/** Characters, of the demo and of a build in words of its own, and the time to make and to open. */
export async function linkRows(): Promise<Row[]> {
  const build = parseBuild(readFileSync(demoFile, 'utf8'), 'the demo');
  const round = roundOf(build);
  const link = linkOf(round);
  const withStory = linkOf(roundOf(build, { withStory: true }));
  const own = linkOf(roundOf(ownWords(build)));
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
      id: 'link.own',
      value: own.length,
      unit: 'characters',
      against: 'limit 2000, where a link is told to be long',
      note: 'a build of the same shape, whose names and figures no dictionary holds',
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

const syllables = 'ba de fi go ku la mo ne pi ru sa to vu wi xe yo zu qua plo stri'.split(' ');

/** The same build with names made of syllables and colours drawn by lot. */
function ownWords(build: Build): Build {
  const draw = drawFrom(1126);
  const word = (): string =>
    Array.from({ length: 3 }, () => syllables[draw.below(syllables.length)]!).join('');
  const within = (low: number, high: number): number => low + (high - low) * draw.uniform();
  return {
    ...build,
    name: `${word()} ${word()}`,
    parts: build.parts.map((part) => ({ ...part, name: word() })),
    finishes: build.finishes.map((finish) => ({
      ...finish,
      name: `${word()} ${word()}`,
      colour: { lab: [within(5, 95), within(-60, 60), within(-60, 60)], light: 'D65' },
      gloss60: within(5, 95),
    })),
  };
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
