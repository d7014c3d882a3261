/** Which part does a pixel show? Red is part + 1 of 255; nothing where there is no car. */
export const idFragment = /* glsl */ `
precision highp float;
flat in int vPart;
out vec4 id;
void main() {
  id = vec4(float(vPart + 1) / 255.0, 0.0, 0.0, 1.0);
}
`;
