/**
 * What is seen from where? Measures a car's sight table from the bytes of its GLB: what each part
 * shows in each look by zone, which parts meet along what length, and how narrow each part looks.
 * Lengths and areas are full-size mm, areas projected onto the plane of the picture at the depth of
 * each pixel; glass is seen through. Same bytes, same table. Takes some ten seconds on one core.
 * Smallest dimension: per node and look the median local thickness; across looks the upper quartile
 * by pixels of those at least 4 px wide, because a ribbon seen aslant looks narrower than it is.
 */
import { type BorderLength, bordersOf, dissolve, type LabelPicture } from './border.ts';
import { readGlb } from './glb.ts';
import { boundsOf, type Mesh, middleOf, radiusOf } from './mesh.ts';
import { type IdBuffer, rasterise } from './raster.ts';
import { type SightTable, zones } from './table.ts';
import { medianThickness } from './thickness.ts';
import { cameraFraming, cameraOf, closeMm, directionOf, type Look, looksOf } from './viewpoint.ts';
import { zonesOf } from './zone.ts';

/** Pixels along each side of a look: 7.5 mm a pixel for a whole car, 0.3 mm at 1:24. */
const sidePx = 640;
/** Pixels along each side of a picture that frames one tiny node. */
const framedPx = 200;
/** Masks narrower than this are too coarse to measure. */
const narrowestPx = 4;
/** Wider than 10 mm at 1:24 is no small dimension. */
const widestMm = 240;
/** A node's median is read from at least this many pixels. */
const fewestPixels = 12;

/** One reading of one node's thickness in one picture. */
interface Reading {
  readonly medianMm: number;
  readonly medianPx: number;
  readonly pixels: number;
}

/** Sight table of the car in a GLB. @throws InputError where the bytes hold no readable car. */
export async function measureSight(
  bytes: Uint8Array,
  { car, name, meshSha256 }: { car: string; name: string; meshSha256: string },
): Promise<SightTable> {
  return sightOf(await readGlb(bytes), { car, name, meshSha256 });
}

/** Sight table of a mesh already read. */
export function sightOf(
  mesh: Mesh,
  { car, name, meshSha256 }: { car: string; name: string; meshSha256: string },
): SightTable {
  const looks = looksOf(mesh);
  const zoneOf = zonesOf(mesh);
  const isSolid = (node: number): boolean => !mesh.parts[mesh.nodes[node]!.part]!.isGlass;
  const areas = mesh.parts.map(() => new Map<string, number[]>());
  const borders = new Map<number, BorderLength>();
  const readings = mesh.nodes.map((): Reading[] => []);
  const best = mesh.nodes.map(() => ({ pixels: 0, look: 0 }));

  looks.forEach((look, index) => {
    const buffer = rasterise(mesh, cameraOf(mesh, look), sidePx, sidePx, isSolid);
    addAreas(mesh, buffer, zoneOf, areas, index, looks.length);
    addBorders(mesh, buffer, look.weight, borders);
    for (const { node, reading } of readNodes(mesh, buffer)) {
      readings[node]!.push(reading);
      if (reading.pixels > best[node]!.pixels) best[node] = { pixels: reading.pixels, look: index };
    }
  });
  frameTinyNodes(mesh, looks, best, readings, isSolid);

  const weight = looks.reduce((sum, look) => sum + look.weight, 0);
  const bounds = boundsOf(mesh)!;
  return {
    format: 'testspoon-sight',
    version: 1,
    car,
    name,
    lengthMm: Math.round(bounds.high[2] - bounds.low[2]),
    meshSha256,
    looks: looks.map(({ frame: _, ...look }) => look),
    parts: mesh.parts.map((part, index) => ({
      id: part.id,
      name: part.name,
      role: part.role,
      group: part.group,
      ...(part.given ? { given: part.given } : {}),
      ...(part.goesWith ? { goesWith: part.goesWith } : {}),
      areaMm2: Object.fromEntries(
        zones.flatMap((zone) => {
          const ofLooks = areas[index]!.get(zone);
          return ofLooks ? [[zone, ofLooks.map(Math.round)]] : [];
        }),
      ),
      thicknessMm: thicknessOf(
        readings.filter((_, node) => mesh.nodes[node]!.part === index).flat(),
      ),
    })),
    borders: tableBorders(mesh, borders, weight),
  };
}

function addAreas(
  mesh: Mesh,
  { triangle, depth, pixelScale }: IdBuffer,
  zoneOf: Uint8Array,
  areas: readonly Map<string, number[]>[],
  look: number,
  lookCount: number,
): void {
  for (let at = 0; at < triangle.length; at++) {
    const seen = triangle[at]!;
    if (seen < 0) continue;
    const ofPart = areas[mesh.nodes[mesh.nodeOf[seen]!]!.part]!;
    const zone = zones[zoneOf[seen]!]!;
    let ofLooks = ofPart.get(zone);
    if (ofLooks === undefined) {
      ofLooks = new Array<number>(lookCount).fill(0);
      ofPart.set(zone, ofLooks);
    }
    ofLooks[look]! += (depth[at]! * pixelScale) ** 2;
  }
}

/** The parts seen in an id-buffer, as a picture of labels. */
export function labelsOf(mesh: Mesh, buffer: IdBuffer): LabelPicture {
  const label = new Int16Array(buffer.triangle.length);
  for (let at = 0; at < label.length; at++) {
    const seen = buffer.triangle[at]!;
    label[at] = seen < 0 ? -1 : mesh.nodes[mesh.nodeOf[seen]!]!.part;
  }
  return { ...buffer, label };
}

function addBorders(
  mesh: Mesh,
  buffer: IdBuffer,
  weight: number,
  sums: Map<number, BorderLength>,
): void {
  const picture = dissolve(labelsOf(mesh, buffer), (part) => mesh.parts[part]!.role === 'gap');
  for (const { a, b, lengthMm, touchingMm } of bordersOf(picture)) {
    const sum = sums.get(a * 65536 + b) ?? { a, b, lengthMm: 0, touchingMm: 0 };
    sum.lengthMm += weight * lengthMm;
    sum.touchingMm += weight * touchingMm;
    sums.set(a * 65536 + b, sum);
  }
}

function tableBorders(
  mesh: Mesh,
  sums: ReadonlyMap<number, BorderLength>,
  weight: number,
): SightTable['borders'] {
  const tenth = (value: number): number => Math.round(value * 10) / 10;
  return [...sums.values()]
    .map(({ a, b, lengthMm, touchingMm }) => {
      const [first, second] = [mesh.parts[a]!.id, mesh.parts[b]!.id].sort() as [string, string];
      const touching = Math.round((1000 * touchingMm) / lengthMm) / 1000;
      return { a: first, b: second, lengthMm: tenth(lengthMm / weight), touching };
    })
    .filter(({ lengthMm }) => lengthMm > 0)
    .sort((p, q) => (p.a < q.a || (p.a === q.a && p.b < q.b) ? -1 : 1));
}

/** Thickness readings of every node seen in a picture that can be narrow at all. */
function readNodes(mesh: Mesh, buffer: IdBuffer): { node: number; reading: Reading }[] {
  const { width, height, triangle } = buffer;
  const boxes = mesh.nodes.map(() => ({ x0: width, y0: height, x1: -1, y1: -1, pixels: 0 }));
  for (let at = 0; at < triangle.length; at++) {
    if (triangle[at]! < 0) continue;
    const box = boxes[mesh.nodeOf[triangle[at]!]!]!;
    const [x, y] = [at % width, Math.floor(at / width)];
    box.x0 = Math.min(box.x0, x);
    box.x1 = Math.max(box.x1, x);
    box.y0 = Math.min(box.y0, y);
    box.y1 = Math.max(box.y1, y);
    box.pixels++;
  }
  return boxes.flatMap((box, node) =>
    box.pixels < fewestPixels ? [] : [{ node, reading: readNode(mesh, buffer, node, box) }],
  );
}

function readNode(
  mesh: Mesh,
  { width, triangle, depth, pixelScale }: IdBuffer,
  node: number,
  { x0, y0, x1, y1, pixels }: { x0: number; y0: number; x1: number; y1: number; pixels: number },
): Reading {
  const [w, h] = [x1 - x0 + 1, y1 - y0 + 1];
  const mask = new Uint8Array(w * h);
  let depthSum = 0;
  for (let y = 0; y < h; y++) {
    for (let x = 0; x < w; x++) {
      const there = (y + y0) * width + x + x0;
      const seen = triangle[there]!;
      if (seen < 0 || mesh.nodeOf[seen] !== node) continue;
      mask[y * w + x] = 1;
      depthSum += depth[there]!;
    }
  }
  const mmPerPx = (depthSum / pixels) * pixelScale;
  const medianPx = medianThickness(mask, w, h, widestMm / mmPerPx);
  return { medianMm: medianPx * mmPerPx, medianPx, pixels };
}

/** Looks closer at nodes that no look shows wide enough to measure, from where they show best. */
function frameTinyNodes(
  mesh: Mesh,
  looks: readonly Look[],
  best: readonly { pixels: number; look: number }[],
  readings: readonly Reading[][],
  isSolid: (node: number) => boolean,
): void {
  best.forEach(({ pixels, look: index }, node) => {
    const look = looks[index];
    if (pixels === 0 || look === undefined || readings[node]!.some(isSound)) return;
    const box = boundsOf(mesh, (triangle) => mesh.nodeOf[triangle] === node)!;
    const direction = directionOf(look.azimuthDegrees, look.elevationDegrees);
    const camera = cameraFraming(middleOf(box), direction, closeMm, radiusOf(box) * 1.05);
    const buffer = rasterise(mesh, camera, framedPx, framedPx, isSolid);
    const closer = readNodes(mesh, buffer).find((one) => one.node === node);
    if (closer !== undefined) readings[node]!.push(closer.reading);
  });
}

const isSound = ({ medianPx, pixels }: Reading): boolean =>
  medianPx >= narrowestPx && pixels >= fewestPixels;

/** Upper quartile of the readings by pixels, mm; null where wide or never seen well enough. */
function thicknessOf(readings: readonly Reading[]): number | null {
  let usable = readings.filter(isSound);
  if (usable.length === 0) {
    // Under 4 px everywhere, as panel gaps are: the finest look there is.
    const finest = readings.reduce((a, b) => (a.medianPx >= b.medianPx ? a : b), nothing);
    usable = finest.pixels > 0 ? [finest] : [];
  }
  usable.sort((a, b) => a.medianMm - b.medianMm);
  const total = usable.reduce((sum, { pixels }) => sum + pixels, 0);
  let passed = 0;
  for (const { medianMm, pixels } of usable) {
    passed += pixels;
    if (passed >= 0.75 * total) return medianMm > widestMm ? null : Math.round(medianMm * 10) / 10;
  }
  return null;
}
const nothing: Reading = { medianMm: 0, medianPx: 0, pixels: 0 };
