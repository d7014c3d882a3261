/**
 * Which parts are pointed at, and which differ? First every pixel says its part (red: part + 1 of
 * 255), whether it is lit (green) and marked (blue); then lit parts get a ring, light within dark,
 * that stands out of any paint, and marked ones a dashed line.
 */
export const idFragment = /* glsl */ `
precision highp float;
in vec3 vPlace;
in vec3 vNormal;
in float vShade;
flat in int vPart;
uniform highp sampler2D uRows;
out vec4 id;
void main() {
  vec4 row = texelFetch(uRows, ivec2(5, vPart), 0);
  id = vec4(float(vPart + 1) / 255.0, row.z, row.w, 1.0);
}
`;

export const ringVertex = 'void main() { gl_Position = vec4(position.xy, 0.0, 1.0); }';

export const ringFragment = /* glsl */ `
precision highp float;
uniform sampler2D uIds;
/** Device pixels to a CSS pixel, and the corner of the view in the target. */
uniform float uPixel;
uniform vec2 uCorner;
out vec4 ring;

vec2 flags(vec2 at) {
  ivec2 size = textureSize(uIds, 0);
  return texelFetch(uIds, clamp(ivec2(at), ivec2(0), size - 1), 0).gb;
}
void main() {
  vec2 at = gl_FragCoord.xy - uCorner;
  vec2 own = flags(at);
  vec3 near_ = vec3(0.0);
  float marked = 0.0;
  for (int k = 0; k < 12; k++) {
    float turn = float(k) * 0.5235988;
    vec2 way = vec2(cos(turn), sin(turn)) * uPixel;
    near_.x = max(near_.x, flags(at + way * 0.8).x);
    near_.y = max(near_.y, flags(at + way * 1.7).x);
    near_.z = max(near_.z, flags(at + way * 3.0).x);
    marked = max(marked, flags(at + way * 1.3).y);
  }
  ring = vec4(0.0);
  if (own.y < 0.5 && marked > 0.5) {
    float dash = step(0.5, fract((at.x + at.y) / (7.0 * uPixel)));
    ring = vec4(vec3(dash), 1.0);
  }
  if (own.x < 0.5 && near_.z > 0.5) {
    float light = max(near_.x, near_.y);
    ring = vec4(vec3(light), 1.0);
  }
}
`;
