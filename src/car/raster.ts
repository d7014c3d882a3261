/**
 * Which triangle does each point of a picture show? A plain software id-buffer: typed arrays, exact
 * whole-number edges with the top-left fill rule (no holes and no double hits along shared edges),
 * depth correct in perspective. Runs alike in Node, a page and a worker, and always gives the same.
 * In: a mesh and a camera, mm. Out: triangle and depth (mm along the view axis) per pixel.
 * Measured against ray casting with a hierarchy: 12 views took 0.3 s instead of 5 s.
 */
import type { Vector3 } from '../ground/vector.ts';
import type { Mesh } from './mesh.ts';

export interface Camera {
  readonly eye: Vector3;
  /** Unit axes; forward points into the picture. */
  readonly right: Vector3;
  readonly up: Vector3;
  readonly forward: Vector3;
  /** Tangent of half the field across the picture's width. */
  readonly halfTangent: number;
}

export interface IdBuffer {
  readonly width: number;
  readonly height: number;
  /** Triangle seen, row by row from the top left; −1 where none is. */
  readonly triangle: Int32Array;
  /** Distance along the view axis, mm; infinite where nothing is seen. */
  readonly depth: Float32Array;
  /** A pixel at depth d is d × pixelScale mm wide and high. */
  readonly pixelScale: number;
}

/** Screen grid: corners snap to 1/256 pixel, so that edge tests are exact in whole numbers. */
const grid = 256;
/** Nothing closer than this is drawn, mm; a camera inside the bodywork sees nothing useful. */
const nearest = 50;

/** The triangle nearest to the eye at every pixel centre; both sides of a triangle count. */
export function rasterise(
  mesh: Mesh,
  camera: Camera,
  width: number,
  height: number,
  isDrawn: (node: number) => boolean,
): IdBuffer {
  const count = mesh.nodeOf.length;
  const triangle = new Int32Array(width * height).fill(-1);
  // Reciprocal depth is linear across the screen; the largest wins, zero is infinitely far.
  const nearness = new Float32Array(width * height);
  const drawn = mesh.nodes.map((_, node) => isDrawn(node));
  const { x, y, reciprocal } = project(mesh, camera, width, height);
  for (let t = 0; t < count; t++) {
    if (drawn[mesh.nodeOf[t]!]) fill(t, x, y, reciprocal, width, height, triangle, nearness);
  }
  const depth = nearness.map((value) => 1 / value);
  return { width, height, triangle, depth, pixelScale: (2 * camera.halfTangent) / width };
}

interface Projected {
  readonly x: Float64Array;
  readonly y: Float64Array;
  /** 1 / depth, per mm; zero marks a corner too near or behind the eye. */
  readonly reciprocal: Float64Array;
}

function project(mesh: Mesh, camera: Camera, width: number, height: number): Projected {
  const { positions } = mesh;
  const { eye, right, up, forward } = camera;
  const corners = mesh.nodeOf.length * 3;
  const x = new Float64Array(corners);
  const y = new Float64Array(corners);
  const reciprocal = new Float64Array(corners);
  const perUnit = (grid * width) / (2 * camera.halfTangent);
  for (let corner = 0; corner < corners; corner++) {
    const rx = positions[corner * 3]! - eye[0];
    const ry = positions[corner * 3 + 1]! - eye[1];
    const rz = positions[corner * 3 + 2]! - eye[2];
    const depth = rx * forward[0] + ry * forward[1] + rz * forward[2];
    if (depth < nearest) continue;
    const across = rx * right[0] + ry * right[1] + rz * right[2];
    const upward = rx * up[0] + ry * up[1] + rz * up[2];
    reciprocal[corner] = 1 / depth;
    x[corner] = Math.round((grid * width) / 2 + (across / depth) * perUnit);
    y[corner] = Math.round((grid * height) / 2 - (upward / depth) * perUnit);
  }
  return { x, y, reciprocal };
}

/** Twice the signed area of a, b, p; positive where p lies to the right of a → b (y down). */
const edge = (ax: number, ay: number, bx: number, by: number, px: number, py: number): number =>
  (bx - ax) * (py - ay) - (by - ay) * (px - ax);

/** Pixel centres exactly on an edge belong to the triangle whose top or left edge it is. */
const bias = (dx: number, dy: number): number => (dy < 0 || (dy === 0 && dx > 0) ? 0 : 1);

function fill(
  t: number,
  x: Float64Array,
  y: Float64Array,
  reciprocal: Float64Array,
  width: number,
  height: number,
  triangle: Int32Array,
  nearness: Float32Array,
): void {
  const a = t * 3;
  let b = a + 1;
  let c = a + 2;
  if (reciprocal[a] === 0 || reciprocal[b] === 0 || reciprocal[c] === 0) return;
  let area = edge(x[a]!, y[a]!, x[b]!, y[b]!, x[c]!, y[c]!);
  if (area === 0) return;
  if (area < 0) {
    [b, c] = [c, b];
    area = -area;
  }
  const [ax, ay, bx, by, cx, cy] = [x[a]!, y[a]!, x[b]!, y[b]!, x[c]!, y[c]!];
  const half = grid / 2;
  const left = Math.max(0, Math.ceil((Math.min(ax, bx, cx) - half) / grid));
  const right = Math.min(width - 1, Math.floor((Math.max(ax, bx, cx) - half) / grid));
  const top = Math.max(0, Math.ceil((Math.min(ay, by, cy) - half) / grid));
  const bottom = Math.min(height - 1, Math.floor((Math.max(ay, by, cy) - half) / grid));
  if (left > right || top > bottom) return;
  const biasA = bias(cx - bx, cy - by);
  const biasB = bias(ax - cx, ay - cy);
  const biasC = bias(bx - ax, by - ay);
  const [na, nb, nc] = [reciprocal[a]! / area, reciprocal[b]! / area, reciprocal[c]! / area];
  const px = left * grid + half;
  const [stepA, stepB, stepC] = [(by - cy) * grid, (cy - ay) * grid, (ay - by) * grid];
  for (let row = top; row <= bottom; row++) {
    const py = row * grid + half;
    let wa = edge(bx, by, cx, cy, px, py);
    let wb = edge(cx, cy, ax, ay, px, py);
    let wc = edge(ax, ay, bx, by, px, py);
    for (let at = row * width + left, end = row * width + right; at <= end; at++) {
      if (wa >= biasA && wb >= biasB && wc >= biasC) {
        const near = wa * na + wb * nb + wc * nc;
        if (near > nearness[at]!) {
          nearness[at] = near;
          triangle[at] = t;
        }
      }
      wa += stepA;
      wb += stepB;
      wc += stepC;
    }
  }
}
