/**
 * The room in the shader's own language; the same definitions as `light/room.ts`, so that light
 * worked out on either side agrees. `seen` blurs a lamp by the roughness of what mirrors it: soft
 * edges of a Gaussian, and a wider skirt for the long tail that rough films have.
 */
import { mostPanels } from '../light/room.ts';

export const roomGlsl = /* glsl */ `
const int PANELS = ${mostPanels};
uniform vec3 uCentre[PANELS];
uniform vec4 uAcross[PANELS];
uniform vec4 uAlong[PANELS];
uniform float uRadiance[PANELS];
/** Zenith, horizon, far bench, floor. */
uniform vec4 uDome;

float domeSeen(vec3 toward, float blur) {
  float sky = mix(uDome.y, uDome.x, smoothstep(0.0, 0.9, toward.y));
  float edge = max(0.015, blur);
  float ground = mix(uDome.z, uDome.w, smoothstep(0.0, 0.7, -toward.y));
  return mix(ground, sky, smoothstep(-edge, edge, toward.y));
}
float domeOn(vec3 n) {
  return mix(0.5 * (uDome.z + uDome.w), 0.5 * (uDome.x + uDome.y), 0.5 + 0.5 * n.y);
}
float panelOn(int k, vec3 place, vec3 n) {
  vec3 way = uCentre[k] - place;
  float d2 = dot(way, way);
  vec3 toward = way * inversesqrt(d2);
  float facing = abs(dot(cross(uAcross[k].xyz, uAlong[k].xyz), toward));
  float area = 4.0 * uAcross[k].w * uAlong[k].w;
  float wrapped = max(0.0, (dot(n, toward) + 0.15) / 1.15);
  return uRadiance[k] * area * facing * wrapped / (3.14159265 * d2 + area);
}
float covered(float at, float half_, float soft) {
  return smoothstep(-soft, soft, at + half_) - smoothstep(-soft, soft, at - half_);
}
float panelSeen(int k, vec3 place, vec3 r, float blur) {
  vec3 way = uCentre[k] - place;
  vec3 facing = cross(uAcross[k].xyz, uAlong[k].xyz);
  float off = dot(way, facing);
  float along = dot(r, facing);
  if (off * along <= 0.0) return 0.0;
  float t = off / along;
  vec3 hit = r * t - way;
  float u = dot(hit, uAcross[k].xyz);
  float w = dot(hit, uAlong[k].xyz);
  // Soft boxes are bright in the middle and fade to their rims.
  float soft = 0.1 + 2.0 * t * blur;
  vec2 beyond = abs(vec2(u, w)) - vec2(uAcross[k].w, uAlong[k].w);
  if (max(beyond.x, beyond.y) > 3.5 * soft) return 0.0;
  float core = covered(u, uAcross[k].w, soft) * covered(w, uAlong[k].w, soft);
  if (blur < 0.012) return uRadiance[k] * core;
  float skirt = covered(u, uAcross[k].w, 3.5 * soft) * covered(w, uAlong[k].w, 3.5 * soft);
  return uRadiance[k] * mix(core, skirt, 0.3);
}
/** Radiance met from direction r by a surface of this roughness, at least so much blurred. */
float roomSeen(vec3 place, vec3 r, float roughness, float leastBlur) {
  float blur = max(leastBlur, 0.004 + 1.3 * roughness * roughness);
  float sum = domeSeen(r, 1.2 * blur);
  for (int k = 0; k < PANELS; k++) {
    if (uRadiance[k] > 0.0) sum += panelSeen(k, place, r, blur);
  }
  return sum;
}
`;
