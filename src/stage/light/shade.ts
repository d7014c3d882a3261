/**
 * How much of the room's light does the car keep from itself and from the bench it stands on? For
 * each corner, the light that reaches it over the light that would without the car; 0–1. The soft
 * shadow on the bench is the same figure for a flat grid.
 *
 * The car is drawn as depth from every direction that stands for the room (`room.ts`), 64 pictures
 * in one texture; one pass then asks for each point which of them see it. Exact up to the number of
 * directions and a few millimetres of depth; glass keeps nothing back.
 */
import {
  DataTexture,
  DepthTexture,
  Mesh as Drawn,
  FloatType,
  GLSL3,
  Matrix4,
  NearestFilter,
  OrthographicCamera,
  PlaneGeometry,
  RGBAFormat,
  ShaderMaterial,
  Vector3,
  type WebGLRenderer,
  WebGLRenderTarget,
} from 'three';
import type { Shape } from '../car/shape.ts';
import { type Room, raysOf } from './room.ts';

const across = 8;
const directions = across * across;
const tile = 256;
const rowLength = 512;
/** Points are lifted off their own surface by this much, m. */
const liftM = 0.014;
const biasM = 0.01;

/** Cells of the bench's grid, and its half size, m. */
export const bench = { columns: 96, rows: 160, halfAcross: 1.9, halfAlong: 3.3 } as const;

export interface Shade {
  /** Light that reaches each corner, 0–255. */
  readonly corners: Uint8Array;
  /** Light that reaches each cell of the bench, 0–255, row by row from −x, −z. */
  readonly bench: Uint8Array;
}

/** Works out the shade of a car in a room. */
export function shadeOf(gl: WebGLRenderer, shape: Shape, room: Room): Shade {
  const rays = raysOf(room, directions);
  const reach = reachOf(shape);
  const depths = depthsFrom(
    gl,
    shape,
    rays.map(({ toward }) => new Vector3(...toward)),
    reach,
  );
  const points = pointsOf(shape);
  const directionRows = new Float32Array(directions * 5 * 4);
  rays.forEach(({ toward, weight }, k) => {
    directionRows.set(depths.views[k]!.elements, k * 20);
    directionRows.set([...toward, weight], k * 20 + 16);
  });
  const seen = reached(gl, points, tableOf(directionRows, 5, directions), depths, reach);
  depths.target.dispose();
  const count = shape.geometry.getAttribute('position').count;
  const pick = (from: number, length: number): Uint8Array =>
    Uint8Array.from({ length }, (_, k) => seen[(from + k) * 4]!);
  return { corners: pick(0, count), bench: pick(count, bench.columns * bench.rows) };
}

/** Half size of a box that holds the car from any side, m. */
function reachOf({ geometry }: Shape): number {
  geometry.computeBoundingBox();
  const box = geometry.boundingBox!;
  return Math.max(box.min.length(), box.max.length()) * 1.02;
}

interface Depths {
  readonly target: WebGLRenderTarget;
  /** From metres to −1…1 of each picture. */
  readonly views: readonly Matrix4[];
}

function depthsFrom(
  gl: WebGLRenderer,
  shape: Shape,
  toward: readonly Vector3[],
  reach: number,
): Depths {
  const side = across * tile;
  const target = new WebGLRenderTarget(side, side);
  target.depthTexture = new DepthTexture(side, side);
  target.depthTexture.minFilter = NearestFilter;
  target.depthTexture.magFilter = NearestFilter;
  const material = new ShaderMaterial({
    glslVersion: GLSL3,
    colorWrite: false,
    vertexShader:
      'void main() { gl_Position = projectionMatrix * modelViewMatrix * vec4(position, 1.0); }',
    fragmentShader: 'out vec4 none; void main() { none = vec4(0.0); }',
  });
  material.side = 2;
  const car = new Drawn(shape.geometry, material);
  car.frustumCulled = false;
  const camera = new OrthographicCamera(-reach, reach, reach, -reach, 0, 4 * reach);
  const { start, count } = shape.geometry.drawRange;
  shape.geometry.setDrawRange(0, shape.opaqueCount);
  const { autoClear } = gl;
  gl.autoClear = false;
  gl.setRenderTarget(target);
  gl.clear();
  const views = toward.map((direction, k) => {
    camera.position.copy(direction).multiplyScalar(2 * reach);
    camera.up.set(0, Math.abs(direction.y) > 0.95 ? 0 : 1, Math.abs(direction.y) > 0.95 ? 1 : 0);
    camera.lookAt(0, 0, 0);
    camera.updateMatrixWorld();
    target.viewport.set((k % across) * tile, Math.floor(k / across) * tile, tile, tile);
    target.scissor.copy(target.viewport);
    target.scissorTest = true;
    gl.setRenderTarget(target);
    gl.render(car, camera);
    return new Matrix4().multiplyMatrices(camera.projectionMatrix, camera.matrixWorldInverse);
  });
  gl.setRenderTarget(null);
  gl.autoClear = autoClear;
  shape.geometry.setDrawRange(start, count);
  material.dispose();
  return { target, views };
}

interface Points {
  readonly count: number;
  readonly places: Float32Array;
  readonly normals: Float32Array;
}

/** Corners of the car, then cells of the bench; four numbers each, padded to whole rows. */
function pointsOf({ geometry }: Shape): Points {
  const position = geometry.getAttribute('position');
  const normal = geometry.getAttribute('normal');
  const cells = bench.columns * bench.rows;
  const count = position.count + cells;
  const height = Math.ceil(count / rowLength);
  const places = new Float32Array(height * rowLength * 4);
  const normals = new Float32Array(height * rowLength * 4);
  for (let k = 0; k < position.count; k++) {
    places.set([position.getX(k), position.getY(k), position.getZ(k)], k * 4);
    normals.set([normal.getX(k), normal.getY(k), normal.getZ(k)], k * 4);
  }
  for (let cell = 0; cell < cells; cell++) {
    const column = cell % bench.columns;
    const row = Math.floor(cell / bench.columns);
    const x = (((column + 0.5) / bench.columns) * 2 - 1) * bench.halfAcross;
    const z = (((row + 0.5) / bench.rows) * 2 - 1) * bench.halfAlong;
    places.set([x, 0, z], (position.count + cell) * 4);
    normals.set([0, 1, 0], (position.count + cell) * 4);
  }
  return { count: height * rowLength, places, normals };
}

function tableOf(values: Float32Array, width: number, height: number): DataTexture {
  const table = new DataTexture(values, width, height, RGBAFormat, FloatType);
  table.needsUpdate = true;
  return table;
}

/** One pixel a point: the share of the room's light that reaches it, 0–255 in each channel. */
function reached(
  gl: WebGLRenderer,
  points: Points,
  rays: DataTexture,
  { target: depths }: Depths,
  reach: number,
): Uint8Array {
  const height = points.count / rowLength;
  const places = tableOf(points.places, rowLength, height);
  const normals = tableOf(points.normals, rowLength, height);
  const material = new ShaderMaterial({
    glslVersion: GLSL3,
    depthTest: false,
    uniforms: {
      uPlaces: { value: places },
      uNormals: { value: normals },
      uRays: { value: rays },
      uDepths: { value: depths.depthTexture },
      uBias: { value: biasM / (4 * reach) },
    },
    vertexShader: 'void main() { gl_Position = vec4(position.xy, 0.0, 1.0); }',
    fragmentShader: /* glsl */ `
precision highp float;
uniform highp sampler2D uPlaces;
uniform highp sampler2D uNormals;
uniform highp sampler2D uRays;
uniform highp sampler2D uDepths;
uniform float uBias;
out vec4 share;
void main() {
  ivec2 at = ivec2(gl_FragCoord.xy);
  vec3 n = texelFetch(uNormals, at, 0).xyz;
  vec4 place = vec4(texelFetch(uPlaces, at, 0).xyz + n * ${liftM.toFixed(4)}, 1.0);
  float all = 0.0;
  float met = 0.0;
  for (int k = 0; k < ${directions}; k++) {
    vec4 ray = texelFetch(uRays, ivec2(4, k), 0);
    float on = ray.w * max(0.0, dot(n, ray.xyz));
    if (on <= 0.0) continue;
    mat4 view = mat4(texelFetch(uRays, ivec2(0, k), 0), texelFetch(uRays, ivec2(1, k), 0),
      texelFetch(uRays, ivec2(2, k), 0), texelFetch(uRays, ivec2(3, k), 0));
    vec3 seen = (view * place).xyz * 0.5 + 0.5;
    vec2 tile = vec2(float(k % ${across}), float(k / ${across}));
    vec2 pixel = (tile + clamp(seen.xy, 0.001, 0.999)) * ${tile.toFixed(1)};
    float nearest = texelFetch(uDepths, ivec2(pixel), 0).r;
    all += on;
    met += on * step(seen.z - uBias, nearest);
  }
  share = vec4(all > 0.0 ? met / all : 1.0);
}`,
  });
  const sheet = new Drawn(new PlaneGeometry(2, 2), material);
  sheet.frustumCulled = false;
  const target = new WebGLRenderTarget(rowLength, height, {
    depthBuffer: false,
    minFilter: NearestFilter,
    magFilter: NearestFilter,
  });
  gl.setRenderTarget(target);
  gl.render(sheet, new OrthographicCamera());
  const answer = new Uint8Array(points.count * 4);
  gl.readRenderTargetPixels(target, 0, 0, rowLength, height, answer);
  gl.setRenderTarget(null);
  for (const done of [target, places, normals, rays, material, sheet.geometry]) done.dispose();
  return answer;
}
