/**
 * Draws one car into one rectangle: paint, glass, shadow, then rings about what is lit or marked.
 * At most five draw calls a car.
 */
import {
  type Camera,
  Mesh as Drawn,
  NearestFilter,
  OrthographicCamera,
  PlaneGeometry,
  type Scene,
  type ShaderMaterial,
  type WebGLRenderer,
  WebGLRenderTarget,
} from 'three';
import { ringMaterial } from '../shader/materials.ts';

/** A rectangle of the target, device pixels, y up. */
export interface Area {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** A car of the scene: its mesh, and what it wears when it is asked which part is where. */
export interface DrawnCar {
  readonly body: Drawn;
  readonly ids: ShaderMaterial;
}

export interface Drawer {
  /** Draws `car` alone into `area` of what is being drawn into; rings only where asked. */
  draw(
    scene: Scene,
    camera: Camera,
    car: DrawnCar,
    area: Area,
    marks: { readonly isRinged: boolean; readonly pixel: number },
  ): void;
  /** The parts in a picture of this size: red is part + 1, 0 where there is none. */
  ids(scene: Scene, camera: Camera, car: DrawnCar, width: number, height: number): Uint8Array;
  dispose(): void;
}

/** Draws with this renderer; `cars` are all bodies of the scene, of which one is shown at a time. */
export function drawerFor(gl: WebGLRenderer, cars: () => Iterable<DrawnCar>): Drawer {
  const ring = ringMaterial();
  const sheet = new Drawn(new PlaneGeometry(2, 2), ring);
  sheet.frustumCulled = false;
  const flat = new OrthographicCamera();
  const ids = new WebGLRenderTarget(1, 1, { minFilter: NearestFilter, magFilter: NearestFilter });

  const alone = (car: DrawnCar): void => {
    for (const other of cars()) other.body.visible = other === car;
  };

  function writeIds(
    scene: Scene,
    camera: Camera,
    car: DrawnCar,
    width: number,
    height: number,
  ): void {
    const into = gl.getRenderTarget();
    const { material } = car.body;
    ids.setSize(width, height);
    gl.setRenderTarget(ids);
    gl.setClearAlpha(0);
    gl.clear();
    alone(car);
    // Glass is looked through: only the first of the two materials draws.
    car.body.material = [car.ids];
    const others = scene.children.filter((child) => child !== car.body && child.visible);
    for (const other of others) other.visible = false;
    gl.render(scene, camera);
    for (const other of others) other.visible = true;
    car.body.material = material;
    gl.setRenderTarget(into);
  }

  return {
    draw(scene, camera, car, area, { isRinged, pixel }) {
      const { x, y, width, height } = area;
      if (isRinged) writeIds(scene, camera, car, width, height);
      aim(gl, area);
      alone(car);
      gl.render(scene, camera);
      if (!isRinged) return;
      ring.uniforms.uIds!.value = ids.texture;
      ring.uniforms.uPixel!.value = pixel;
      ring.uniforms.uCorner!.value.set(x, y);
      gl.render(sheet, flat);
    },
    ids(scene, camera, car, width, height) {
      writeIds(scene, camera, car, width, height);
      const answer = new Uint8Array(width * height * 4);
      gl.readRenderTargetPixels(ids, 0, 0, width, height, answer);
      return answer;
    },
    dispose() {
      for (const done of [ring, sheet.geometry, ids]) done.dispose();
    },
  };
}

/** Confines drawing to an area of the present target, in device pixels. */
function aim(gl: WebGLRenderer, { x, y, width, height }: Area): void {
  const target = gl.getRenderTarget();
  if (target !== null) {
    target.viewport.set(x, y, width, height);
    target.scissor.set(x, y, width, height);
    target.scissorTest = true;
    gl.setRenderTarget(target);
    return;
  }
  const ratio = gl.getPixelRatio();
  gl.setViewport(x / ratio, y / ratio, width / ratio, height / ratio);
  gl.setScissor(x / ratio, y / ratio, width / ratio, height / ratio);
  gl.setScissorTest(true);
}
