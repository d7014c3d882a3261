/**
 * How true, how light and how quick is the stage? In a real browser that draws in software, so that
 * times are told only as ratios within this run. Run `npm run build` first, for the scripts' sizes.
 */
import type { Mesh } from '../../src/car/mesh.ts';
import { poseAt } from '../../src/stage/camera/places.ts';
import { demoCars, readRoadster } from '../browser/stage/roadster.ts';
import { openStudio, type StudioPage, type TestStudio } from '../browser/stage/studio.ts';
import { type Truth, truthInEvenLight, truthUnderSoftboxes } from '../browser/stage/truth.ts';
import { median, type Row, spent } from './row.ts';
import { lazyScripts, packedBytes } from './scripts.ts';

/** A stand of a desktop page, CSS pixels. */
const size = { width: 420, height: 280 };
const chunkLimitBytes = 240_000;
const startups = 5;

/** Figures of the stage. */
export async function stageRows(): Promise<Row[]> {
  const chunk = chunkRow();
  const mesh = await readRoadster();
  const studio = await openStudio();
  try {
    const page = await studio.open();
    const [even, softbox] = [
      await truthInEvenLight(page.bench),
      await truthUnderSoftboxes(page.bench),
    ];
    await page.page.close();
    return [
      ...truthRows(even, softbox),
      await startupRow(studio, mesh),
      ...(await drawingRows(studio, mesh)),
      chunk,
    ];
  } finally {
    await studio.close();
  }
}

function truthRows(even: Truth, softbox: Truth): Row[] {
  const against = 'the scored Lab as a screen can show it; colorjs.io agrees';
  return [
    {
      id: 'stage.truth',
      value: even.mean,
      unit: 'ΔE2000, mean',
      against: `${against}; limit 0.5`,
      note: `${even.count} bodies on a sphere in even light, mirror left out`,
    },
    {
      id: 'stage.truth.worst',
      value: even.worst,
      unit: 'ΔE2000, worst',
      against: `${against}; limit 1.5`,
      note: `at ${even.worstHex}`,
    },
    {
      id: 'stage.truth.softbox',
      value: softbox.mean,
      unit: 'ΔE2000, mean',
      against: `${against}; beside a perfect white in the same place; limit 0.5`,
      note: `${softbox.count} bodies under soft boxes, mirror left out; worst ${softbox.worst.toFixed(2)} at ${softbox.worstHex}`,
    },
  ];
}

/**
 * Three cars in one context against a context for each, the same code, each time on a fresh page,
 * turn about; geometry, shade, shaders and the first full frame of all three included.
 */
async function startupRow(studio: TestStudio, mesh: Mesh): Promise<Row> {
  const cars = demoCars(mesh, 3);
  const pose = poseAt(mesh, 'front', size.width / size.height);
  const stages = [[cars], cars.map((car) => [car])];
  const times: number[][] = [[], []];
  for (let k = 0; k <= startups; k++) {
    for (const [side, stage] of stages.entries()) {
      const { page, bench, errors } = await studio.open();
      const ms = await bench.stand(stage, pose, size);
      await page.close();
      if (errors.length > 0) throw new Error(`nothing was timed: ${errors.join('; ')}`);
      // The first round warms the browser itself.
      if (k > 0) times[side]!.push(ms / 1000);
    }
  }
  const ratios = times[0]!.map((one, k) => one / times[1]![k]!);
  return {
    id: 'stage.startup',
    value: median(ratios),
    unit: '×',
    against: 'three contexts with one car each, from the same code; limit 0.4',
    note: `three cars to their first full frame; painting them in software costs as much in one context as in three, so that only what goes before can be saved; one context ${spent(median(times[0]!))}, three ${spent(median(times[1]!))}; ratios ${ratios.map((ratio) => ratio.toFixed(2)).join(', ')}`,
  };
}

async function drawingRows(studio: TestStudio, mesh: Mesh): Promise<Row[]> {
  const { page, bench } = await studio.open();
  const cars = demoCars(mesh, 4);
  const pose = poseAt(mesh, 'front', size.width / size.height);
  await bench.stand([cars], pose, size);
  const calls = await callsOf(bench, cars[0]!.id, pose);
  const [one, four] = [
    await bench.frameMs(pose, size, 1, 9),
    await bench.frameMs(pose, size, 4, 9),
  ];
  await page.close();
  return [
    {
      id: 'stage.calls',
      value: calls,
      unit: 'draw calls a car',
      against: 'the limit of 40',
      note: 'counted at the WebGL interface; depth, shadow, paint and glass',
    },
    {
      id: 'stage.frame',
      value: four / one,
      unit: '×',
      against: 'a frame with one car; 4 is even growth',
      note: `four cars of ${size.width} × ${size.height} pixels, drawn in software; one ${spent(one / 1000)}, four ${spent(four / 1000)}`,
    },
  ];
}

async function callsOf(
  bench: StudioPage['bench'],
  id: string,
  pose: ReturnType<typeof poseAt>,
): Promise<number> {
  await bench.counts();
  await bench.drawOnce(id, pose, size);
  return (await bench.counts()).draws;
}

/** What the 3D adds to the page's scripts. */
function chunkRow(): Row {
  const scripts = lazyScripts(['LiveCars', 'glb']);
  const bytes = packedBytes(scripts);
  return {
    id: 'stage.chunk',
    value: bytes / 1000,
    unit: 'kB gzip',
    against: `the limit of ${chunkLimitBytes / 1000} kB (1 kB = 1000 bytes)`,
    note: `${bytes} bytes in ${scripts.length} scripts fetched after the first page for the 3D: ${scripts.map((name) => name.replace(/^assets\//, '')).join(', ')}`,
  };
}
