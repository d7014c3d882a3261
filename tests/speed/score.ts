/** How quick is scoring, against the same work done plainly with colour objects? */
import { readFileSync } from 'node:fs';
import Color from 'colorjs.io';
import { assignmentOf, defaultWeights } from '../../src/build/build.ts';
import { parseBuild } from '../../src/build/file.ts';
import type { SightTable } from '../../src/car/table.ts';
import { whiteOf } from '../../src/colour/illuminant.ts';
import { bandCount, labsFromReflectances } from '../../src/colour/spectrum.ts';
import { weightsOf } from '../../src/colour/table/weights.ts';
import { drawFrom } from '../../src/ground/draw.ts';
import { type Judged, judge } from '../../src/score/judged.ts';
import { overallOf, termsOf } from '../../src/score/terms.ts';
import { plainCosts } from '../score/plain.ts';
import { paired, type Row, spent } from './row.ts';

const read = (path: string): string =>
  readFileSync(new URL(`../../${path}`, import.meta.url), 'utf8');

/** Ratios of the scores. */
export function scoreRows(): Row[] {
  const build = parseBuild(read('src/build/demo.json'), 'demo.json');
  const sight: SightTable = JSON.parse(read('models/roadster.sight.json'));
  const judged = judge(build, sight, { today: '2031-05-01' });
  const choice = judged.choiceOf(assignmentOf(build, build.alternatives[0]!));
  return [alternativeRow(judged, choice), freshRow(judged, choice), spectraRow()];
}

/** Six scores and the overall of one alternative, tables as they are while a builder works. */
function alternativeRow({ terms }: Judged, choice: Int32Array): Row {
  const costs = new Float64Array(6);
  assertSame(terms.costs(choice, costs), plainCosts(terms, choice));
  const timed = paired(
    () => overallOf(terms.costs(choice, costs), defaultWeights),
    () => overallOf(plainCosts(terms, choice), defaultWeights),
  );
  return {
    id: 'score.alternative',
    value: timed.ratio,
    unit: '×',
    against: 'the plain implementation: colour objects, a CIEDE2000 call per pair, equal to 1e-9',
    note: `one alternative of the demo, pair tables filled; ours ${spent(timed.one)}, plain ${spent(timed.other)}`,
  };
}

/** The same from empty tables: what the first alternative after opening a build costs. */
function freshRow({ terms }: Judged, choice: Int32Array): Row {
  const costs = new Float64Array(6);
  const timed = paired(
    () =>
      overallOf(termsOf(terms, { families: terms.families }).costs(choice, costs), defaultWeights),
    () => overallOf(plainCosts(terms, choice), defaultWeights),
  );
  return {
    id: 'score.fresh',
    value: timed.ratio,
    unit: '×',
    against: 'the plain implementation',
    note: `laying out the tables included; ours ${spent(timed.one)}, plain ${spent(timed.other)}`,
  };
}

function assertSame(ours: ArrayLike<number>, plain: readonly number[]): void {
  plain.forEach((cost, k) => {
    if (Math.abs(cost - ours[k]!) > 1e-9) {
      throw new Error(`score ${k}: ours ${ours[k]}, plain ${cost}: nothing was timed`);
    }
  });
}

/** Spectrum to Lab under lamp A for 10,000 finishes, against colour objects of a second library. */
function spectraRow(): Row {
  const count = 10_000;
  const draw = drawFrom(11);
  const flat = Float64Array.from({ length: count * bandCount }, () => draw.uniform());
  const weights = weightsOf.A;
  const white = [...whiteOf('A')];
  const axes = [weights.x, weights.y, weights.z];
  const asObjects = (): number => {
    let sum = 0;
    for (let k = 0; k < count; k++) {
      const bands = Array.from(flat.subarray(k * bandCount, (k + 1) * bandCount));
      const [x, y, z] = axes.map((axis) => bands.reduce((all, r, b) => all + r * axis[b]!, 0));
      // Relative to the light's own white, carried to the library's D65 so that its Lab applies.
      const relative = [x! / white[0]!, y! / white[1]!, z! / white[2]!];
      const d65 = Color.spaces['xyz-d65']!.white;
      const coords = relative.map((value, axis) => value * d65[axis]!) as [number, number, number];
      sum += new Color('xyz-d65', coords).to('lab-d65').coords[0]!;
    }
    return sum;
  };
  const timed = paired(() => labsFromReflectances(flat, 'A'), asObjects, { samples: 5 });
  return {
    id: 'score.spectra',
    value: timed.ratio,
    unit: '×',
    against: 'the same work through colorjs.io objects',
    note: `10,000 finishes under lamp A; ours ${spent(timed.one)}, objects ${spent(timed.other)}`,
  };
}
