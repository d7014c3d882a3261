/**
 * How does light fall on the car in a drawing? From an id-buffer and the mesh's normals: how dark
 * or light a matt grey car would be under a high soft lamp, darkened in hollows (screen-space
 * obscurance by opposite pairs), and where a glossy one would mirror a long softbox overhead or a
 * strip of light along its side. For pictures only: scores never read it. Our judgement throughout.
 */
import { clamp, dot, normalize, type Vector3 } from '../ground/vector.ts';
import type { Mesh } from './mesh.ts';
import type { Camera, IdBuffer } from './raster.ts';

export interface Shading {
  /** 0 as lit as can be taken for plain – 1 black; 0 where nothing is seen. */
  readonly dark: Float32Array;
  /** 0 plain – 1 fully lit from above. */
  readonly light: Float32Array;
  /** Above 0 where a lamp is mirrored, 1 deep inside its image. */
  readonly gloss: Float32Array;
}

/** Brightness of a matt surface that counts as plain paint. */
const plain = 0.62;
/** Radius of the hollows that darken, mm, and the depth that darkens them fully. */
const hollowMm = 160;
const hollowDepthMm = 140;
/** Softbox over the car: height, half width across and half length along the car, mm. */
const lamp = { height: 4200, across: 1150, along: 4200 };
/** Strip of light beside the car: distance, lower and upper edge, half length, mm. */
const strip = { away: 7000, low: 1500, high: 3000, along: 4500 };

/** Shading of every pixel of an id-buffer. */
export function shadingOf(mesh: Mesh, camera: Camera, buffer: IdBuffer): Shading {
  const { width, height, triangle, depth, pixelScale } = buffer;
  const dark = new Float32Array(triangle.length);
  const light = new Float32Array(triangle.length);
  const gloss = new Float32Array(triangle.length).fill(-1);
  const { right, up, forward } = camera;
  const key = normalize([
    up[0] * 0.75 - right[0] * 0.45 - forward[0] * 0.5,
    up[1] * 0.75 - right[1] * 0.45 - forward[1] * 0.5 + 0.5,
    up[2] * 0.75 - right[2] * 0.45 - forward[2] * 0.5,
  ]);
  for (let at = 0; at < triangle.length; at++) {
    const seen = triangle[at]!;
    if (seen < 0) continue;
    const x = ((at % width) + 0.5 - width / 2) * pixelScale;
    const y = (height / 2 - Math.floor(at / width) - 0.5) * pixelScale;
    const ray: Vector3 = [
      forward[0] + right[0] * x + up[0] * y,
      forward[1] + right[1] * x + up[1] * y,
      forward[2] + right[2] * x + up[2] * y,
    ];
    const place: Vector3 = [
      camera.eye[0] + ray[0] * depth[at]!,
      camera.eye[1] + ray[1] * depth[at]!,
      camera.eye[2] + ray[2] * depth[at]!,
    ];
    const normal = normalAt(mesh, seen, place, ray);
    const sky = 0.5 + 0.5 * normal[1];
    const nearGround = clamp(place[1] / 600, 0, 1) * 0.45 + 0.55;
    const open = nearGround + (1 - nearGround) * clamp(normal[1], 0, 1);
    const lit =
      (0.14 + 0.5 * sky * open + 0.45 * Math.max(0, dot(normal, key))) * openness(buffer, at);
    dark[at] = clamp((plain - lit) / plain, 0, 1);
    light[at] = clamp((lit - plain) / (1.05 - plain), 0, 1);
    gloss[at] = mirroredLamp(place, normal, normalize(ray));
  }
  return { dark, light, gloss };
}

/** Unit normal of a triangle at a point on it, turned toward the eye. */
function normalAt(mesh: Mesh, triangle: number, place: Vector3, ray: Vector3): Vector3 {
  const { positions: p, normals: n } = mesh;
  const a = triangle * 9;
  const edge = (from: number, to: number): Vector3 => [
    p[to]! - p[from]!,
    p[to + 1]! - p[from + 1]!,
    p[to + 2]! - p[from + 2]!,
  ];
  const u = edge(a, a + 3);
  const v = edge(a, a + 6);
  const w: Vector3 = [place[0] - p[a]!, place[1] - p[a + 1]!, place[2] - p[a + 2]!];
  const [uu, uv, vv, wu, wv] = [dot(u, u), dot(u, v), dot(v, v), dot(w, u), dot(w, v)];
  const scale = 1 / (uu * vv - uv * uv || 1);
  const b = clamp((vv * wu - uv * wv) * scale, 0, 1);
  const c = clamp((uu * wv - uv * wu) * scale, 0, 1 - b);
  const blend = (axis: number): number =>
    n[a + axis]! * (1 - b - c) + n[a + 3 + axis]! * b + n[a + 6 + axis]! * c;
  const normal = normalize([blend(0), blend(1), blend(2)]);
  return dot(normal, ray) > 0 ? [-normal[0], -normal[1], -normal[2]] : normal;
}

/** Opposite pairs of samples on two rings, as offsets in hollow radii. */
const pairs = [0.35, 1].flatMap((radius) =>
  [0, 1, 2, 3, 4, 5].map((k) => {
    const angle = ((k + radius) * Math.PI) / 6;
    return [radius * Math.cos(angle), radius * Math.sin(angle)] as const;
  }),
);

/** 1 in the open – 0.3 deep in a hollow: how little the surroundings stand in front of a pixel. */
function openness({ width, height, depth, pixelScale }: IdBuffer, at: number): number {
  const here = depth[at]!;
  const reach = hollowMm / (here * pixelScale);
  const x = at % width;
  const y = Math.floor(at / width);
  const rise = (dx: number, dy: number): number => {
    const [sx, sy] = [Math.round(x + dx * reach), Math.round(y + dy * reach)];
    if (sx < 0 || sy < 0 || sx >= width || sy >= height) return 0;
    // Far ahead of the pixel is another thing altogether, which throws no shade on it.
    const step = here - depth[sy * width + sx]!;
    return step > 900 ? 60 : clamp(step, -hollowDepthMm, hollowDepthMm);
  };
  let closed = 0;
  for (const [dx, dy] of pairs) closed += Math.max(0, rise(dx, dy) + rise(-dx, -dy));
  return 1 - 0.75 * clamp((1.3 * closed) / (pairs.length * hollowDepthMm), 0, 1);
}

/** How far inside the image of a lamp the mirrored ray lands; below 0 outside. */
function mirroredLamp(place: Vector3, normal: Vector3, ray: Vector3): number {
  const turn = 2 * dot(ray, normal);
  const [x, y, z] = [
    ray[0] - turn * normal[0],
    ray[1] - turn * normal[1],
    ray[2] - turn * normal[2],
  ];
  let best = -1;
  if (y > 0.02) {
    const t = (lamp.height - place[1]) / y;
    const across = (lamp.across - Math.abs(place[0] + x * t)) / 700;
    const along = (lamp.along - Math.abs(place[2] + z * t)) / 1500;
    best = Math.min(across, along);
  }
  if (Math.abs(x) > 0.02) {
    const t = (strip.away - Math.abs(place[0])) / Math.abs(x);
    const height = place[1] + y * t;
    const within = Math.min(height - strip.low, strip.high - height) / 700;
    best = Math.max(
      best,
      Math.min(within, (strip.along - Math.abs(place[2] + z * t)) / 1500) * 0.8,
    );
  }
  return clamp(best, -1, 1);
}

/** The field averaged over pixels nearby that show the car; edges of the car stay sharp. */
export function softened(
  field: Float32Array,
  { width, height, triangle }: IdBuffer,
  radius: number,
): Float32Array {
  const pass = (from: Float32Array, step: number, limit: (at: number) => number): Float32Array => {
    const to = from.slice();
    for (let at = 0; at < from.length; at++) {
      if (triangle[at]! < 0) continue;
      const along = limit(at);
      let [sum, count] = [0, 0];
      for (let k = -radius; k <= radius; k++) {
        const there = at + k * step;
        if (along + k < 0 || along + k >= (step === 1 ? width : height)) continue;
        if (triangle[there]! < 0) continue;
        sum += from[there]!;
        count++;
      }
      to[at] = sum / count;
    }
    return to;
  };
  const across = pass(field, 1, (at) => at % width);
  return pass(across, width, (at) => Math.floor(at / width));
}
