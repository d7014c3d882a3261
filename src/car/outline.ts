/**
 * What does the car look like before the 3D stage has loaded? Draws a view of the mesh as an SVG:
 * one path per part, filled with the CSS variable `--paint-ID`; over them neutral shade and light,
 * and per part the mirrored lamps, class `gloss`, filled with `--gloss-ID` (a white as opaque as the
 * finish is glossy). Traced from the same id-buffer as the sight table, so what is drawn is what is
 * measured. No ids and no script inside: many copies can stand on one page. Parts far to near.
 */
import { dot, subtract, type Vector3 } from '../ground/vector.ts';
import {
  areaOf,
  type Chain,
  chainsOf,
  levelRings,
  type Ring,
  ringsOf,
  thinned,
  withoutSpecks,
} from './contour.ts';
import { boundsOf, type Mesh, middleOf, radiusOf } from './mesh.ts';
import { type Camera, type IdBuffer, rasterise } from './raster.ts';
import { type Shading, shadingOf, softened } from './shade.ts';
import { labelsOf } from './sight.ts';
import { cameraAt, directionOf, type Frame, frameOf } from './viewpoint.ts';

/** A picture of the car: what it frames and from where. */
export interface View {
  /** Also the middle of its file name: models/CAR.ID.svg. */
  readonly id: string;
  readonly name: string;
  readonly frame: Frame;
  readonly azimuthDegrees: number;
  readonly elevationDegrees: number;
  /** Eye to the middle of what is framed, mm full size. */
  readonly distanceMm: number;
  /** Width of the id-buffer it is traced from, pixels, even; finer is smoother and larger. */
  readonly widthPx: number;
  /** How a close view is cut out of the car. */
  readonly crop?: Crop;
}
/** A rounded frame: |x|ⁿ + |y|ⁿ = 1 of the picture's halves. */
interface Crop {
  /** Room round what is framed, as a factor on its extent. */
  readonly room: number;
  /** n: 2 is an ellipse, 5 nearly a rectangle. */
  readonly squareness: number;
}

const view = (
  id: string,
  name: string,
  frame: Frame,
  azimuthDegrees: number,
  elevationDegrees: number,
  distanceMm: number,
  widthPx: number,
  crop?: Crop,
): View => ({
  id,
  name,
  frame,
  azimuthDegrees,
  elevationDegrees,
  distanceMm,
  widthPx,
  ...(crop ? { crop } : {}),
});

export const views: readonly View[] = [
  view('side', 'side', 'car', 90, 5, 16000, 1400),
  view('front', 'three-quarter front', 'car', 38, 16, 9600, 1400),
  view('rear', 'three-quarter rear', 'car', 142, 18, 9600, 1400),
  view('cabin', 'into the cabin', 'cabin', -131, 46, 6200, 1220, { room: 0.95, squareness: 3.6 }),
  view('wheel', 'front wheel', 'wheel-front', 76, 5, 6000, 1000, { room: 1.2, squareness: 2.5 }),
];

/** Drawing units per pixel, so that whole numbers are fine enough. */
const perPixel = 2;
/** How far a line may stray from the traced one, pixels. */
const partTolerance = 0.4;
const toneTolerance = 0.7;
/** Level above which each layer of shade or light is laid, with its opacity. */
const shades = [
  [0.08, 0.08],
  [0.18, 0.09],
  [0.29, 0.11],
  [0.41, 0.13],
  [0.54, 0.17],
  [0.7, 0.24],
] as const;
const lights = [
  [0.25, 0.06],
  [0.5, 0.07],
  [0.75, 0.08],
] as const;
const glosses = [0.02, 0.45] as const;

/** The view as SVG text. @throws RangeError where the car has nothing that the view frames. */
export function traceView(mesh: Mesh, view: View): string {
  const { camera, width, height } = framed(mesh, view);
  const isGlass = (node: number): boolean => mesh.parts[mesh.nodes[node]!.part]!.isGlass;
  const drawn = (isDrawn: (node: number) => boolean): IdBuffer =>
    cropped(view, rasterise(mesh, camera, width, height, isDrawn));
  const solid = drawn((node) => !isGlass(node));
  const glass = drawn(isGlass);
  const label = withoutSpecks(labelsOf(mesh, solid).label, width, height);
  const chains = chainsOf(label, width, height, partTolerance);
  const drawing = [
    ...(view.frame === 'car' ? shadowPaths(mesh, camera, width, height) : []),
    ...partPaths(mesh, solid, label, ringsOf(chains)),
    ...tonePaths(mesh, view, camera, solid, label),
    linePath(chains, solid),
    ...glassPaths(mesh, solid, glass),
  ];
  const title = `${view.name.charAt(0).toUpperCase()}${view.name.slice(1)} view of the car`;
  const box = `0 0 ${width * perPixel} ${height * perPixel}`;
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="${box}" role="img" aria-label="${title}" stroke-linejoin="round">\n${drawing.filter(Boolean).join('\n')}\n</svg>\n`;
}

/** A camera and picture size that hold what the view frames, and its shadow, tightly. */
function framed(
  mesh: Mesh,
  { frame, azimuthDegrees, elevationDegrees, distanceMm, widthPx: width, crop }: View,
): { camera: Camera; width: number; height: number } {
  const box = frameOf(mesh, frame);
  if (box === undefined) throw new RangeError(`this car has no ${frame} to draw`);
  const direction = directionOf(azimuthDegrees, elevationDegrees);
  const distance = Math.max(distanceMm, 2 * radiusOf(box));
  const rough = cameraAt(middleOf(box), direction, distance, 1);
  // Aim at the middle of the picture of what is framed, which is not the middle of its box.
  const spread = spreadOf(mesh, rough, frame);
  const shift = (axis: 0 | 1 | 2): number =>
    middleOf(box)[axis] + distance * (rough.right[axis] * spread.x + rough.up[axis] * spread.y);
  const [across, down] = crop ? [crop.room, crop.room] : [1.03, 1.06];
  const halfTangent = spread.halfX * across;
  const camera = cameraAt([shift(0), shift(1), shift(2)], direction, distance, halfTangent);
  const height = 2 * Math.ceil((width * spread.halfY * down) / (2 * halfTangent));
  return { camera, width, height };
}

/** Middle and half extent of what is framed in a camera's picture, as tangents. */
function spreadOf(mesh: Mesh, camera: Camera, frame: Frame) {
  const box = frameOf(mesh, frame)!;
  let [left, right, low, high] = [Infinity, -Infinity, Infinity, -Infinity];
  const take = (place: Vector3): void => {
    const ray = subtract(place, camera.eye);
    const depth = dot(ray, camera.forward);
    const [x, y] = [dot(ray, camera.right) / depth, dot(ray, camera.up) / depth];
    left = Math.min(left, x);
    right = Math.max(right, x);
    low = Math.min(low, y);
    high = Math.max(high, y);
  };
  const { positions } = mesh;
  for (let at = 0; at < positions.length; at += 3) {
    const place: Vector3 = [positions[at]!, positions[at + 1]!, positions[at + 2]!];
    if (place.every((value, axis) => value >= box.low[axis]! && value <= box.high[axis]!)) {
      take(place);
    }
  }
  if (frame === 'car') for (const place of shadowOutline(mesh, shadowReach)) take(place);
  const [x, y] = [(left + right) / 2, (low + high) / 2];
  return { x, y, halfX: right - x, halfY: high - y };
}

/** The buffer with nothing beyond the view's rounded frame. */
function cropped({ crop }: View, buffer: IdBuffer): IdBuffer {
  if (crop === undefined) return buffer;
  const { width, height, triangle, depth } = buffer;
  const share = (at: number, size: number): number =>
    Math.abs((2 * (at + 0.5)) / size - 1) ** crop.squareness;
  for (let at = 0; at < triangle.length; at++) {
    if (share(at % width, width) + share(Math.floor(at / width), height) <= 0.99) continue;
    triangle[at] = -1;
    depth[at] = Infinity;
  }
  return buffer;
}

function partPaths(
  mesh: Mesh,
  { depth }: IdBuffer,
  label: Int16Array,
  rings: ReadonlyMap<number, Ring[]>,
): string[] {
  const farness = new Map<number, { sum: number; count: number }>();
  for (let at = 0; at < label.length; at++) {
    if (label[at]! < 0 || depth[at] === Infinity) continue;
    const so = farness.get(label[at]!) ?? { sum: 0, count: 0 };
    so.sum += depth[at]!;
    so.count++;
    farness.set(label[at]!, so);
  }
  const mean = (part: number): number => {
    const { sum, count } = farness.get(part) ?? { sum: 0, count: 1 };
    return sum / count;
  };
  return [...rings]
    .sort(([a], [b]) => mean(b) - mean(a))
    .map(([part, ofPart]) => {
      const { id, hex, role } = mesh.parts[part]!;
      const paint = `var(--paint-${id}, ${hex})`;
      return `<path class="part ${role}" data-part="${id}" fill="${paint}" stroke="${paint}" stroke-width="1.5" fill-rule="evenodd" d="${pathOf(ofPart)}"/>`;
    });
}

/** Shade, light and gloss, traced at half the picture's fineness: they are soft anyway. */
function tonePaths(
  mesh: Mesh,
  view: View,
  camera: Camera,
  solid: IdBuffer,
  label: Int16Array,
): string[] {
  const isSolid = (node: number): boolean => !mesh.parts[mesh.nodes[node]!.part]!.isGlass;
  const [width, height] = [solid.width / 2, solid.height / 2];
  const buffer = cropped(view, rasterise(mesh, camera, width, height, isSolid));
  const shading: Shading = shadingOf(mesh, camera, buffer);
  const tone = (field: Float32Array, level: number, smallest: number): string =>
    tracedAbove(field, width, height, level, smallest);
  const dark = softened(shading.dark, buffer, 2);
  const light = softened(shading.light, buffer, 2);
  const layers = [
    ...shades.map(([level, opacity]) => layer('shade', '#000', opacity, tone(dark, level, 24))),
    ...lights.map(([level, opacity]) => layer('lift', '#fff', opacity, tone(light, level, 24))),
  ];
  const soft = softened(shading.gloss, buffer, 1);
  for (const [part, { id }] of mesh.parts.entries()) {
    const own = soft.map((value, at) => {
      const full = 2 * Math.floor(at / width) * solid.width + 2 * (at % width);
      return label[full] === part ? value : -0.2;
    });
    for (const level of glosses) {
      if (!own.some((value) => value > level)) continue;
      const d = tone(own, level, 20);
      if (d === '') continue;
      const fill = `var(--gloss-${id}, rgb(255 255 255 / 20%))`;
      layers.push(
        `<path class="gloss" pointer-events="none" fill="${fill}" fill-rule="evenodd" d="${d}"/>`,
      );
    }
  }
  return layers;
}

const layer = (className: string, fill: string, opacity: number, d: string): string =>
  d === ''
    ? ''
    : `<path class="${className}" pointer-events="none" fill="${fill}" fill-opacity="${opacity}" fill-rule="evenodd" d="${d}"/>`;

function tracedAbove(
  field: Float32Array,
  width: number,
  height: number,
  level: number,
  smallest: number,
): string {
  const rings = levelRings(field, width, height, level)
    .filter((ring) => areaOf(ring) >= smallest)
    .map((ring) => thinned(ring, true, toneTolerance / 2));
  return pathOf(rings, 2 * perPixel);
}

/** A fine dark line wherever one surface stands in front of another, as a draughtsman would. */
function linePath(chains: readonly Chain[], { depth }: IdBuffer): string {
  const d = chains
    .filter(({ sides }) => {
      const steps = sides.map(([a, b]) => Math.abs((depth[a] ?? 1e5) - (depth[b] ?? 1e5)));
      return sides.length > 8 && steps.filter((step) => step > 40).length > steps.length / 2;
    })
    .map(({ points, isClosed }) => pathOf([points], perPixel, isClosed))
    .join('');
  return d === ''
    ? ''
    : `<path class="line" pointer-events="none" fill="none" stroke="#000" stroke-opacity="0.4" stroke-width="2" d="${d}"/>`;
}

/** Glass: a breath of its own tint where nothing solid stands before it. */
function glassPaths(mesh: Mesh, solid: IdBuffer, glass: IdBuffer): string[] {
  const { width, height } = solid;
  const { label } = labelsOf(mesh, glass);
  for (let at = 0; at < label.length; at++) if (solid.depth[at]! < glass.depth[at]!) label[at] = -1;
  const rings = ringsOf(
    chainsOf(withoutSpecks(label, width, height), width, height, partTolerance),
  );
  return [...rings].map(([part, ofPart]) => {
    const { id } = mesh.parts[part]!;
    return `<path class="glass" data-part="${id}" fill="#e4edf0" fill-opacity="0.16" stroke="#fff" stroke-opacity="0.35" stroke-width="1.5" fill-rule="evenodd" d="${pathOf(ofPart)}"/>`;
  });
}

/** Softness of the shadow: outermost of its layers reaches this much farther than the car. */
const shadowReach = 1.07;
const shadowLayers = 18;

function shadowPaths(mesh: Mesh, camera: Camera, width: number, height: number): string[] {
  const pixels = width / (2 * camera.halfTangent);
  return Array.from({ length: shadowLayers }, (_, index) => {
    const reach = shadowReach - (index * 0.26) / shadowLayers;
    const ring = shadowOutline(mesh, reach).map((place) => {
      const ray = subtract(place, camera.eye);
      const depth = dot(ray, camera.forward);
      const x = width / 2 + (dot(ray, camera.right) / depth) * pixels;
      return [x, height / 2 - (dot(ray, camera.up) / depth) * pixels] as const;
    });
    return layer('shadow', '#000', 0.036, pathOf([ring]));
  });
}

/** The car's shadow on the ground as a rounded outline, grown by `reach`. */
function shadowOutline(mesh: Mesh, reach: number): Vector3[] {
  const { low, high } = boundsOf(mesh)!;
  const body = boundsOf(
    mesh,
    (triangle) => mesh.parts[mesh.nodes[mesh.nodeOf[triangle]!]!.part]!.group === 'wheels',
  );
  const across = (body ? body.high[0] - body.low[0] : high[0] - low[0]) / 2;
  const along = (high[2] - low[2]) / 2;
  return Array.from({ length: 48 }, (_, index) => {
    const angle = (2 * Math.PI * index) / 48;
    const round = (value: number): number => Math.sign(value) * Math.abs(value) ** 0.45;
    return [
      (low[0] + high[0]) / 2 + round(Math.cos(angle)) * (across + (reach - 1) * along),
      0,
      (low[2] + high[2]) / 2 + round(Math.sin(angle)) * along * reach,
    ];
  });
}

/** SVG path data in whole units, each point relative to the last. */
function pathOf(rings: readonly Ring[], scale = perPixel, isClosed = true): string {
  return rings
    .map((ring) => {
      let [x, y] = [0, 0];
      const moves = ring.flatMap((point, index) => {
        const [nx, ny] = [Math.round(point[0] * scale), Math.round(point[1] * scale)];
        const [dx, dy] = [nx - x, ny - y];
        if (index > 0 && dx === 0 && dy === 0) return [];
        [x, y] = [nx, ny];
        return [
          index === 0
            ? `M${dx}${signed(dy)}`
            : `${index === 1 ? 'l' : ''}${index === 1 ? dx : signed(dx)}${signed(dy)}`,
        ];
      });
      return moves.length < 2 ? '' : moves.join('') + (isClosed ? 'z' : '');
    })
    .join('');
}

const signed = (value: number): string => (value < 0 ? String(value) : ` ${value}`);
