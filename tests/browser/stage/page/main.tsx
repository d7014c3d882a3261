/**
 * The test studio's page: the product's own stage with the roadster on it, and spheres in the
 * product's own paint, to be asked for pictures and counts through `window.bench`.
 */
import { createRoot, type Root } from 'react-dom/client';
import { readGlb } from '../../../../src/car/glb.ts';
import type { Mesh } from '../../../../src/car/mesh.ts';
import type { Pose } from '../../../../src/stage/camera/pose.ts';
import type { StagedCar, Studio } from '../../../../src/stage/Scene.tsx';
import { Stage } from '../../../../src/stage/Stage.tsx';
import { lookAs, newEye } from '../../../../src/stage/view/eye.ts';
import { pictureOf } from '../../../../src/stage/view/picture.ts';
import type { Bench, Size } from './bench.ts';
import { listen, taken } from './counted.ts';
import { base64, sphereRenderer, spheresIn, upright } from './sphere.ts';

listen();

interface Standing {
  readonly root: Root;
  readonly place: HTMLElement;
  cars: readonly StagedCar[];
  readonly pose: Pose;
  readonly size: Size;
  studio?: Studio;
  onDrawn: () => void;
  onFound: () => void;
}

const standing: Standing[] = [];
const address = new URL('roadster.glb', document.baseURI).href;
const mesh: Mesh = await fetch(address)
  .then((answer) => answer.arrayBuffer())
  .then((bytes) => readGlb(new Uint8Array(bytes)));

/** Lays a stage out, or out again, its cars side by side. */
function lay(one: Standing): void {
  const { root, cars, pose, size } = one;
  const stands = cars.map(({ id }, at) => ({ id, x: at * size.width, y: 0, ...size }));
  root.render(
    <Stage
      mesh={mesh}
      cars={cars}
      stands={stands}
      poseFor={() => pose}
      width={cars.length * size.width}
      height={size.height}
      fineness={1}
      onStudio={(studio) => {
        one.studio = studio;
      }}
      onDrawn={() => one.onDrawn()}
      onFailed={() => reportError(new Error('the stage cannot be drawn'))}
      onLost={() => undefined}
      onFound={() => one.onFound()}
    />,
  );
}

const drawn = (one: Standing): Promise<void> =>
  new Promise((settled) => {
    one.onDrawn = () => {
      // A frame may be drawn before the studio knows its cars; a full one shows them all.
      if (one.studio?.cars.size !== one.cars.length) return;
      one.onDrawn = () => undefined;
      finish(one.studio);
      settled();
    };
  });

/** Waits for the graphics card: nothing else does so for sure but to read a pixel back. */
function finish({ gl }: Studio): void {
  const context = gl.getContext();
  context.readPixels(0, 0, 1, 1, context.RGBA, context.UNSIGNED_BYTE, new Uint8Array(4));
}

function first(): Standing & { readonly studio: Studio } {
  const one = standing[0];
  if (one?.studio === undefined) throw new Error('no car stands on a stage');
  return one as Standing & { readonly studio: Studio };
}

function drawInto({ scene, drawer, cars }: Studio, id: string, pose: Pose, area: Area): void {
  const car = cars.get(id);
  if (car === undefined) throw new Error(`no car ${id}`);
  drawer.draw(scene, lookAs(newEye(), pose, area.width / area.height), car, area);
}
interface Area extends Size {
  readonly x: number;
  readonly y: number;
}

const bench: Bench = {
  spheres: spheresIn,

  async stand(stages, pose, size) {
    const start = performance.now();
    const waits = stages.map((cars) => {
      const place = document.createElement('div');
      document.body.append(place);
      const root = createRoot(place);
      const nothing = (): void => undefined;
      const one: Standing = { root, place, cars, pose, size, onDrawn: nothing, onFound: nothing };
      standing.push(one);
      const wait = drawn(one);
      lay(one);
      return wait;
    });
    await Promise.all(waits);
    const spent = performance.now() - start;
    // Smooth edges follow the first picture; what comes next is counted without them.
    for (let k = 0; k < 3; k++) await new Promise((next) => requestAnimationFrame(next));
    for (const { studio } of standing) if (studio !== undefined) finish(studio);
    return spent;
  },

  async dress(cars) {
    const one = first();
    one.cars = cars;
    const wait = drawn(one);
    lay(one);
    await wait;
  },

  clear() {
    for (const { root, place } of standing.splice(0)) {
      root.unmount();
      place.remove();
    }
  },

  picture(id, pose, { width, height }) {
    const picture = pictureOf(first().studio, id, pose, width, height);
    if (picture === undefined) throw new Error(`no car ${id}`);
    return { width, height, bytes: base64(picture.data) };
  },

  parts(id, pose, { width, height }) {
    const { scene, drawer, cars } = first().studio;
    const eye = lookAs(newEye(), pose, width / height);
    const ids = drawer.ids(scene, eye, cars.get(id)!, width, height);
    const red = Uint8Array.from({ length: width * height }, (_, at) => ids[at * 4]!);
    return { width, height, bytes: base64(upright(red, width)) };
  },

  drawOnce(id, pose, size) {
    drawInto(first().studio, id, pose, { x: 0, y: 0, ...size });
    finish(first().studio);
  },

  frameMs(pose, size, count, frames) {
    const { studio, cars } = first();
    const times = Array.from({ length: frames }, () => {
      const start = performance.now();
      studio.gl.setScissorTest(false);
      studio.gl.clear();
      for (const [at, { id }] of cars.slice(0, count).entries()) {
        drawInto(studio, id, pose, { x: at * size.width, y: 0, ...size });
      }
      finish(studio);
      return performance.now() - start;
    });
    return times.sort((a, b) => a - b)[frames >> 1]!;
  },

  counts() {
    const { info } = first().studio.gl;
    const { geometries } = info.memory;
    return { ...taken(), geometries, programs: info.programs?.length ?? 0 };
  },

  async loseAndRestore() {
    const one = first();
    const canvas = one.studio.gl.domElement;
    const way = one.studio.gl.getContext().getExtension('WEBGL_lose_context');
    if (way === null) throw new Error('this browser cannot lose a context on purpose');
    const lost = new Promise((settled) =>
      canvas.addEventListener('webglcontextlost', settled, { once: true }),
    );
    way.loseContext();
    await lost;
    // It may be given back only once everyone has heard of the loss.
    await new Promise((settled) => setTimeout(settled));
    const found = new Promise<void>((settled) => {
      one.onFound = settled;
    });
    const again = drawn(one);
    way.restoreContext();
    await found;
    await again;
  },

  errors() {
    const all = [...standing.map(({ studio }) => studio?.gl), sphereRenderer()];
    return all.flatMap((gl) => {
      const code = gl?.getContext().getError() ?? 0;
      return code === 0 ? [] : [code];
    });
  },
};

Object.assign(window, { bench });
