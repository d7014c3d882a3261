/**
 * Draws one car into one rectangle: depth first, so that nothing hidden is painted, then shadow,
 * paint and glass: four draw calls a car.
 */
import {
  type Camera,
  type Mesh as Drawn,
  NearestFilter,
  type Scene,
  type ShaderMaterial,
  type WebGLRenderer,
  WebGLRenderTarget,
} from 'three';
import { depthMaterial, idMaterial } from '../shader/materials.ts';

/** A rectangle of the target, device pixels, y up. */
export interface Area {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** A car of the scene. */
export interface DrawnCar {
  readonly body: Drawn;
}

export interface Drawer {
  /** Draws `car` alone into `area` of what is being drawn into. */
  draw(scene: Scene, camera: Camera, car: DrawnCar, area: Area): void;
  /** The parts in a picture of this size, bottom row first: red is part + 1, 0 where there is none. */
  ids(scene: Scene, camera: Camera, car: DrawnCar, width: number, height: number): Uint8Array;
  dispose(): void;
}

/** Draws with this renderer; `cars` are all bodies of the scene, of which one is shown at a time. */
export function drawerFor(gl: WebGLRenderer, cars: () => Iterable<DrawnCar>): Drawer {
  const id = idMaterial();
  const depth = depthMaterial();
  const ids = new WebGLRenderTarget(1, 1, { minFilter: NearestFilter, magFilter: NearestFilter });

  const alone = (car: DrawnCar): void => {
    for (const other of cars()) other.body.visible = other === car;
  };

  /** Draws nothing but the opaque parts of a car, in another material. */
  function opaqueAlone(
    scene: Scene,
    camera: Camera,
    car: DrawnCar,
    material: ShaderMaterial,
  ): void {
    const { material: own } = car.body;
    alone(car);
    // Glass is looked through: only the first of the two materials draws.
    car.body.material = [material];
    const others = scene.children.filter((child) => child !== car.body && child.visible);
    for (const other of others) other.visible = false;
    gl.render(scene, camera);
    for (const other of others) other.visible = true;
    car.body.material = own;
  }

  return {
    draw(scene, camera, car, area) {
      aim(gl, area);
      opaqueAlone(scene, camera, car, depth);
      gl.render(scene, camera);
    },
    ids(scene, camera, car, width, height) {
      const into = gl.getRenderTarget();
      ids.setSize(width, height);
      gl.setRenderTarget(ids);
      gl.setClearAlpha(0);
      gl.clear();
      opaqueAlone(scene, camera, car, id);
      const answer = new Uint8Array(width * height * 4);
      gl.readRenderTargetPixels(ids, 0, 0, width, height, answer);
      gl.setRenderTarget(into);
      return answer;
    },
    dispose() {
      for (const done of [id, depth, ids]) done.dispose();
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
