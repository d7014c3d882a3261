/** The stage's few shaders as materials; every car shares their programs, each with its own rows. */
import {
  Color,
  CustomBlending,
  type DataTexture,
  DoubleSide,
  GLSL3,
  OneFactor,
  OneMinusSrcAlphaFactor,
  ShaderMaterial,
  Vector2,
  Vector4,
} from 'three';
import { lampsOf } from '../light/lamps.ts';
import { type Room, softboxRoom } from '../light/room.ts';
import type { Rows } from '../surface/rows.ts';
import { idFragment, ringFragment, ringVertex } from './mark.glsl.ts';
import { paintFragment, paintVertex } from './paint.glsl.ts';

/** Where highlights begin to roll off, so that the lamp's image keeps its shape. */
const knee = 0.92;
/** Neutral that unlit parts fade into: the surround, sRGB. */
const surround = '#a6a6a6';

export interface PaintSettings {
  readonly rows: Rows;
  readonly room?: Room;
  readonly isGlass?: boolean;
}

/** The material of all opaque, or of all see-through, parts of one car. */
export function paintMaterial({ rows, room, isGlass = false }: PaintSettings): ShaderMaterial {
  const { r, g, b } = new Color(surround);
  return new ShaderMaterial({
    glslVersion: GLSL3,
    vertexShader: paintVertex,
    fragmentShader: paintFragment,
    uniforms: {
      ...lampsOf(room ?? softboxRoom),
      uRows: { value: rows.texture },
      uMirror: { value: 1 },
      uKnee: { value: knee },
      uFade: { value: new Vector4(r, g, b, 0) },
      uIsGlass: { value: isGlass },
    },
    side: DoubleSide,
    ...(isGlass ? overOthers : {}),
  });
}

/** Laid over what is drawn already, colour weighed by its opacity beforehand. */
const overOthers = {
  transparent: true,
  depthWrite: false,
  blending: CustomBlending,
  blendSrc: OneFactor,
  blendDst: OneMinusSrcAlphaFactor,
} as const;

/** The soft shadow on the bench; black, as opaque as light is kept back. */
export function benchMaterial(shade: DataTexture): ShaderMaterial {
  return new ShaderMaterial({
    glslVersion: GLSL3,
    vertexShader:
      'out vec2 vAt; void main() { vAt = uv; gl_Position = projectionMatrix * modelViewMatrix * vec4(position, 1.0); }',
    fragmentShader: /* glsl */ `
precision highp float;
in vec2 vAt;
uniform sampler2D uShade;
/** The view being drawn: corner and size, device pixels. */
uniform vec4 uView;
out vec4 shadow;
void main() {
  float kept = 1.0 - texture(uShade, vAt).r;
  vec2 edge = smoothstep(vec2(0.5), vec2(0.36), abs(vAt - 0.5));
  // The shadow ends softly where the view ends, so that views have no edges.
  vec2 inView = (gl_FragCoord.xy - uView.xy) / uView.zw;
  vec2 rim = smoothstep(vec2(0.0), vec2(0.1), min(inView, 1.0 - inView));
  float all = edge.x * edge.y * rim.x * rim.y;
  shadow = vec4(0.0, 0.0, 0.0, 0.82 * pow(kept, 1.15) * all);
}`,
    uniforms: { uShade: { value: shade }, uView: { value: new Vector4(0, 0, 1, 1) } },
    side: DoubleSide,
    ...overOthers,
  });
}

/** Writes which part a pixel shows, and whether it is lit or marked. */
export const idMaterial = (rows: Rows): ShaderMaterial =>
  new ShaderMaterial({
    glslVersion: GLSL3,
    vertexShader: paintVertex,
    fragmentShader: idFragment,
    uniforms: { uRows: { value: rows.texture } },
    side: DoubleSide,
  });

/** Rings lit parts and hatches round marked ones, from the pixels that `idMaterial` wrote. */
export const ringMaterial = (): ShaderMaterial =>
  new ShaderMaterial({
    glslVersion: GLSL3,
    vertexShader: ringVertex,
    fragmentShader: ringFragment,
    uniforms: { uIds: { value: null }, uPixel: { value: 1 }, uCorner: { value: new Vector2() } },
    depthTest: false,
    ...overOthers,
  });
