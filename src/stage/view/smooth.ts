/**
 * Smooth edges: the picture is drawn into a target with four samples a pixel and copied onto the
 * canvas. Left out where a machine cannot keep up, which costs nothing but steps along edges.
 */
import {
  Mesh as Drawn,
  GLSL3,
  NearestFilter,
  NoBlending,
  OrthographicCamera,
  PlaneGeometry,
  ShaderMaterial,
  type WebGLRenderer,
  WebGLRenderTarget,
} from 'three';

export interface Smoother {
  /** Calls `draw` and brings what it drew onto the canvas, edges smoothed. */
  smooth(draw: () => void): void;
  dispose(): void;
}

const samples = 4;

/** Smooths what is drawn with this renderer. */
export function smootherFor(gl: WebGLRenderer): Smoother {
  const target = new WebGLRenderTarget(1, 1, {
    samples,
    minFilter: NearestFilter,
    magFilter: NearestFilter,
  });
  const copy = new ShaderMaterial({
    glslVersion: GLSL3,
    vertexShader: 'void main() { gl_Position = vec4(position.xy, 0.0, 1.0); }',
    fragmentShader: /* glsl */ `
precision highp float;
uniform sampler2D uDrawn;
out vec4 copied;
void main() { copied = texelFetch(uDrawn, ivec2(gl_FragCoord.xy), 0); }`,
    uniforms: { uDrawn: { value: target.texture } },
    blending: NoBlending,
    depthTest: false,
    depthWrite: false,
  });
  const sheet = new Drawn(new PlaneGeometry(2, 2), copy);
  sheet.frustumCulled = false;
  const flat = new OrthographicCamera();
  return {
    smooth(draw) {
      const { width, height } = gl.domElement;
      if (target.width !== width || target.height !== height) target.setSize(width, height);
      // All of it is cleared: the last view drawn has left its own bounds on the target.
      target.scissorTest = false;
      target.viewport.set(0, 0, width, height);
      gl.setRenderTarget(target);
      gl.clear();
      draw();
      gl.setRenderTarget(null);
      const ratio = gl.getPixelRatio();
      gl.setScissorTest(false);
      gl.setViewport(0, 0, width / ratio, height / ratio);
      gl.render(sheet, flat);
    },
    dispose() {
      for (const done of [target, copy, sheet.geometry]) done.dispose();
    },
  };
}
