/** The stage's few shaders as materials; every car shares their programs, each with its own rows. */
import {
  CustomBlending,
  type DataTexture,
  DoubleSide,
  FrontSide,
  GLSL3,
  OneFactor,
  OneMinusSrcAlphaFactor,
  ShaderMaterial,
  Vector4,
} from 'three';
import { lampsOf } from '../light/lamps.ts';
import { type Room, softboxRoom } from '../light/room.ts';
import type { Rows } from '../surface/rows.ts';
import { idFragment } from './id.glsl.ts';
import { bareVertex, paintFragment, paintVertex } from './paint.glsl.ts';

/** Where highlights begin to roll off, so that the lamp's image keeps its shape. */
const knee = 0.92;

export interface PaintSettings {
  readonly rows: Rows;
  readonly room?: Room;
  readonly isGlass?: boolean;
}

/** The material of all opaque, or of all see-through, parts of one car. */
export function paintMaterial({ rows, room, isGlass = false }: PaintSettings): ShaderMaterial {
  return new ShaderMaterial({
    glslVersion: GLSL3,
    vertexShader: paintVertex,
    fragmentShader: paintFragment,
    uniforms: {
      ...lampsOf(room ?? softboxRoom),
      uRows: { value: rows.texture },
      uMirror: { value: 1 },
      uKnee: { value: knee },
      uIsGlass: { value: isGlass },
    },
    side: isGlass ? DoubleSide : FrontSide,
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

/** Writes depth alone, so that only what is seen is painted. */
export const depthMaterial = (): ShaderMaterial =>
  new ShaderMaterial({
    glslVersion: GLSL3,
    vertexShader: bareVertex,
    fragmentShader: 'precision highp float; out vec4 none; void main() { none = vec4(0.0); }',
    colorWrite: false,
  });

/** Writes which part a pixel shows. */
export const idMaterial = (): ShaderMaterial =>
  new ShaderMaterial({
    glslVersion: GLSL3,
    vertexShader: bareVertex,
    fragmentShader: idFragment,
  });
