/**
 * One shader for every finish on a car. A fragment reads its part's row (`surface/rows.ts`) and
 * builds: body colour by how far each lamp stands from the mirror direction (face at 15°, body at
 * 45°, flop at 110° [ASTME2194]), depth of a dyed film by the way light takes through it, grain,
 * and one mirror lobe at the surface. Shade comes per vertex from `light/shade.ts`; light thrown on
 * between surfaces of one colour is added [Jimenez2016], what a rough mirror throws back on average
 * [Karis2013].
 *
 * In even light with the mirror off a solid comes out at exactly its body colour. Limits: lamps are
 * blurred as Gaussians in place of the film's own lobe; the car does not mirror itself.
 */
import { roomGlsl } from './room.glsl.ts';

/** Places every corner, and says what each lamp throws on it: smooth enough to be worked out here. */
export const paintVertex = /* glsl */ `
invariant gl_Position;
${roomGlsl}
in float part;
in float shade;
out vec3 vPlace;
out vec3 vNormal;
out float vShade;
out float vLit[PANELS];
flat out int vPart;
void main() {
  vec4 place = modelMatrix * vec4(position, 1.0);
  vPlace = place.xyz;
  vNormal = mat3(modelMatrix) * normal;
  vShade = shade;
  vPart = int(part + 0.5);
  vec3 n = normalize(vNormal);
  for (int k = 0; k < PANELS; k++) vLit[k] = uRadiance[k] > 0.0 ? panelOn(k, vPlace, n) : 0.0;
  gl_Position = projectionMatrix * viewMatrix * place;
}
`;

/** The same place and no more, for depth and for part numbers. */
export const bareVertex = /* glsl */ `
invariant gl_Position;
in float part;
flat out int vPart;
void main() {
  vPart = int(part + 0.5);
  gl_Position = projectionMatrix * viewMatrix * (modelMatrix * vec4(position, 1.0));
}
`;

export const paintFragment = /* glsl */ `
precision highp float;
${roomGlsl}
in vec3 vPlace;
in vec3 vNormal;
in float vShade;
in float vLit[PANELS];
flat in int vPart;
out vec4 painted;

uniform highp sampler2D uRows;
/** 0 leaves the mirror out, for checks of colour. */
uniform float uMirror;
/** Above this, highlights roll off; 1 cuts them. */
uniform float uKnee;
uniform bool uIsGlass;

/** Cosines of 15°, 45° and 110° from the mirror direction. */
const float ONCE_MORE = 0.09;
const vec3 ASPECULAR = vec3(0.9659, 0.7071, -0.3420);

float hash(vec3 p) {
  p = fract(p * vec3(0.1031, 0.1030, 0.0973));
  p += dot(p, p.yxz + 33.33);
  return fract((p.x + p.y) * p.z);
}
vec3 hash3(vec3 p) {
  p = fract(p * vec3(0.1031, 0.1030, 0.0973));
  p += dot(p, p.yxz + 33.33);
  return fract((p.xxy + p.yxx) * p.zyx);
}
/** 0–1 smooth noise and, in yzw, its slope. */
vec4 noise(vec3 p) {
  vec3 i = floor(p);
  vec3 f = fract(p);
  vec3 u = f * f * (3.0 - 2.0 * f);
  vec3 du = 6.0 * f * (1.0 - f);
  float a = hash(i), b = hash(i + vec3(1, 0, 0)), c = hash(i + vec3(0, 1, 0)), d = hash(i + vec3(1, 1, 0));
  float e = hash(i + vec3(0, 0, 1)), g = hash(i + vec3(1, 0, 1)), h = hash(i + vec3(0, 1, 1)), j = hash(i + vec3(1, 1, 1));
  float k1 = b - a, k2 = c - a, k3 = e - a, k4 = a - b - c + d;
  float k5 = a - c - e + h, k6 = a - b - e + g, k7 = -a + b + c - d + e - g - h + j;
  float value = a + k1 * u.x + k2 * u.y + k3 * u.z + k4 * u.x * u.y + k5 * u.y * u.z + k6 * u.z * u.x + k7 * u.x * u.y * u.z;
  return vec4(value, du * vec3(
    k1 + k4 * u.y + k6 * u.z + k7 * u.y * u.z,
    k2 + k5 * u.z + k4 * u.x + k7 * u.z * u.x,
    k3 + k6 * u.x + k5 * u.y + k7 * u.x * u.y));
}
/** Tilt of the flake nearest to p; flakes lie scattered, one to a cell of size 1. */
vec3 flakeAt(vec3 p) {
  vec3 corner = floor(p - 0.5);
  vec3 tilt = vec3(0.0);
  float nearest = 9.0;
  for (int k = 0; k < 8; k++) {
    vec3 cell = corner + vec3(k & 1, (k >> 1) & 1, k >> 2);
    vec3 lies = hash3(cell);
    vec3 way = cell + 0.15 + 0.7 * lies - p;
    float far = dot(way, way);
    if (far < nearest) {
      nearest = far;
      tilt = lies.yzx;
    }
  }
  return tilt;
}
/** The two coordinates of the plane a surface mostly lies in. */
vec2 laidFlat(vec3 p, vec3 n) {
  vec3 a = abs(n);
  return a.y > a.x && a.y > a.z ? p.xz : (a.x > a.z ? p.zy : p.xy);
}
/** 1 where a length on the car spans pixels enough to be drawn, 0 where it would only flicker. */
float isResolved(float length_, float pixel) {
  return smoothstep(1.1, 2.6, length_ / pixel);
}
vec3 encoded(vec3 linear) {
  vec3 c = max(linear, 0.0);
  return mix(12.92 * c, 1.055 * pow(c, vec3(1.0 / 2.4)) - 0.055, step(0.0031308, c));
}
vec3 rolled(vec3 c) {
  vec3 room = vec3(max(1e-4, 1.0 - uKnee));
  vec3 over = max(c - uKnee, 0.0);
  return min(c, vec3(uKnee)) + room * (1.0 - exp(-over / room));
}

void main() {
  vec4 row0 = texelFetch(uRows, ivec2(0, vPart), 0);
  vec4 row1 = texelFetch(uRows, ivec2(1, vPart), 0);
  vec4 row2 = texelFetch(uRows, ivec2(2, vPart), 0);
  vec4 row3 = texelFetch(uRows, ivec2(3, vPart), 0);
  vec4 row4 = texelFetch(uRows, ivec2(4, vPart), 0);
  vec4 row5 = texelFetch(uRows, ivec2(5, vPart), 0);
  vec3 face = row0.rgb, body = row1.rgb, flop = row2.rgb, mirror = row3.rgb, dye = row4.rgb;
  float roughness = row0.a, sparkle = row1.a, flake = row2.a, opacity = row3.a, bloom = row4.a;
  int grain = int(row5.x + 0.5);
  float grainSize = row5.y;

  vec3 v = normalize(cameraPosition - vPlace);
  vec3 n = normalize(vNormal);
  float pixel = length(fwidth(vPlace)) * 0.7;
  float bent = min(0.3, 0.12 * length(fwidth(n)));
  float tone = 1.0;

  if (grain == 1) {
    vec2 at = laidFlat(vPlace, n) / grainSize;
    vec2 in_ = fract(at) - 0.5;
    bool over = mod(floor(at.x) + floor(at.y), 2.0) < 0.5;
    float thread = over ? in_.x : in_.y;
    float along = over ? in_.y : in_.x;
    float height = (1.0 - 2.6 * thread * thread) * (1.0 - 1.1 * along * along);
    tone = mix(1.0, 0.55 + 0.55 * height, isResolved(grainSize, pixel));
  } else if (grain == 2) {
    float seen = isResolved(grainSize, pixel);
    if (seen > 0.0) {
      float pile = noise(vPlace / grainSize).x + 0.5 * noise(vPlace / (0.45 * grainSize)).x;
      tone = mix(1.0, 0.62 + 0.5 * pile, seen);
    }
  } else if (grain == 3) {
    float seen = isResolved(grainSize, pixel);
    if (seen > 0.0) {
      vec4 crease = noise(vPlace / grainSize);
      vec4 fine = noise(vPlace / (0.41 * grainSize));
      n = normalize(n - seen * (0.1 * crease.yzw + 0.07 * fine.yzw));
      tone = mix(1.0, 0.9 + 0.2 * crease.x, seen);
    }
  } else if (grain == 4) {
    float seen = isResolved(4.0 * grainSize, pixel);
    float line = hash(floor(vec3(laidFlat(vPlace, n).yy / grainSize, 1.0))) - 0.5;
    tone = mix(1.0, 1.0 + 0.22 * line, seen);
  }

  // Normals met beyond the outline are turned back to the eye.
  float facing = dot(n, v);
  if (facing < 0.02) n = normalize(n + (0.02 - facing) * v);
  float nv = max(dot(n, v), 0.02);
  vec3 r = reflect(-v, n);

  // Light on the body.
  float dome = domeOn(n);
  float white = dome;
  vec3 seen = vec3(0.0);
  bool isTurning = sparkle > 0.0;
  // Between its three looks a flake film changes evenly in the logarithm, as light through a dye.
  vec3 logFace, logBody, logFlop;
  if (isTurning) {
    logFace = log(max(face, 1e-4));
    logBody = log(max(body, 1e-4));
    logFlop = log(max(flop, 1e-4));
  }
  for (int k = 0; k < PANELS; k++) {
    float on = vLit[k];
    white += on;
    if (isTurning && on > 0.001) {
      float aspecular = dot(r, normalize(uCentre[k] - vPlace));
      vec3 look = mix(logFlop, logBody, smoothstep(ASPECULAR.z, ASPECULAR.y, aspecular));
      seen += on * exp(mix(look, logFace, smoothstep(ASPECULAR.y, ASPECULAR.x, aspecular)));
    }
  }
  vec3 thrown = isTurning ? seen + dome * body : white * body;

  // A dyed film deepens where the eye looks through it at a slant.
  float slant = inversesqrt(1.0 - (1.0 - nv * nv) / 2.25) - 1.0;
  thrown *= exp(-2.0 * slant * dye) * tone;

  // Shade, and the light that surfaces of this colour throw on into it.
  vec3 hue = clamp(body + mirror * 0.5, 0.0, 1.0);
  vec3 a = 2.0404 * hue - 0.3324;
  vec3 b = -4.7951 * hue + 0.6417;
  vec3 c = 2.7552 * hue + 0.6903;
  vec3 shade = max(vec3(vShade), ((vShade * a + b) * vShade + c) * vShade);
  // Light that has come off other surfaces reaches even the foot of the cabin.
  thrown *= ONCE_MORE + (1.0 - ONCE_MORE) * shade;

  // Upright fibres catch light at the rim.
  thrown += bloom * (body * 0.8 + 0.02) * white * pow(1.0 - nv, 3.0) * vShade;

  // The mirror at the surface.
  vec4 q = roughness * vec4(-1.0, -0.0275, -0.572, 0.022) + vec4(1.0, 0.0425, 1.04, -0.04);
  float bend = min(q.x * q.x, exp2(-9.28 * nv)) * q.x + q.y;
  vec2 lobe = vec2(-1.04, 1.04) * bend + q.zw;
  float hasMirror = step(1e-6, mirror.r + mirror.g + mirror.b);
  vec3 share = (mirror * lobe.x + lobe.y) * hasMirror * uMirror;
  // A pixel that bends round an edge mirrors all that its normals face, not one glaring spot of it.
  float met = roomSeen(vPlace, r, roughness, bent);
  float open_ = clamp(pow(nv + vShade, exp2(-16.0 * roughness - 1.0)) - 1.0 + vShade, 0.0, 1.0);
  vec3 glint = share * met * mix(1.0, open_, 0.9) * mix(1.0, tone, 0.6);

  // Single flakes, each tilted its own way; many to a pixel even each other out.
  float many = exp2(ceil(log2(max(1.0, 1.4 * pixel / flake))));
  float contrast = sparkle * min(1.0, 1.6 / many);
  if (contrast > 0.02) {
    float size = flake * many;
    vec3 tilt = flakeAt(vPlace / size) * 2.0 - 1.0;
    vec3 m = normalize(n + 0.34 * tilt);
    float lit = roomSeen(vPlace, reflect(-v, m), 0.28, 0.0);
    float even_ = roomSeen(vPlace, r, 0.62, 0.0);
    thrown *= max(0.25, 1.0 + contrast * clamp((lit - even_) * 0.5, -0.6, 2.4) * uMirror);
  }

  vec3 colour = thrown * (1.0 - uMirror * max(0.0, lobe.x * 0.04 + lobe.y - 0.04) * hasMirror) + glint;
  if (uIsGlass) {
    float alpha = clamp(opacity + max(glint.r, max(glint.g, glint.b)), 0.0, 1.0);
    vec3 tint = thrown * opacity + glint;
    painted = vec4(encoded(tint / max(alpha, 1e-3)) * alpha, alpha);
    return;
  }
  painted = vec4(encoded(rolled(colour)), 1.0);
}
`;
