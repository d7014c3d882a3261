/**
 * Photographs sprayed bowls: the very shader of the cars, on the back of a spoon, under the same
 * soft boxes. One bowl, one material and one target serve every finish.
 */
import {
  Mesh as Drawn,
  OrthographicCamera,
  Scene as Scenery,
  type WebGLRenderer,
  WebGLRenderTarget,
} from 'three';
import { directionOf } from '../../car/viewpoint.ts';
import { brightened, type Room, whiteAt } from '../light/room.ts';
import { paintMaterial } from '../shader/materials.ts';
import { rowsFor, wear } from '../surface/rows.ts';
import type { Surface } from '../surface/surface.ts';
import { uprightPixels } from '../view/pixels.ts';
import { bowlGeometry } from './bowl.ts';

/** Half the picture, m: as wide as the bowl is drawn on the page, a little room round it. */
const halfWidth = 0.029;
const halfHeight = 0.019;
/** The bowl turns its back to an eye above the bench, so that the long box falls on its shoulder. */
const eyeAzimuth = 24;
const eyeElevation = 38;

/** What a perfect white in the middle of the bowl comes out as. */
const fullLight = 0.97;

export interface SpoonStudio {
  /** A picture of the bowl sprayed with this surface, its surround clear. */
  photograph(surface: Surface, width: number, height: number): ImageData;
  dispose(): void;
}

/** A spoon studio in this renderer. */
export function spoonStudio(gl: WebGLRenderer, room: Room): SpoonStudio {
  const rows = rowsFor(1);
  const toward = directionOf(eyeAzimuth, eyeElevation);
  // Exposed for the middle of the bowl: there the finish has its own colour.
  const exposure = fullLight / whiteAt(room, [0, 0, 0], toward);
  const material = paintMaterial({ rows, room: brightened(room, exposure) });
  const bowl = new Drawn(bowlGeometry(), material);
  bowl.frustumCulled = false;
  const scene = new Scenery();
  scene.add(bowl);
  const camera = new OrthographicCamera(-halfWidth, halfWidth, halfHeight, -halfHeight, 0, 2);
  camera.position.set(...toward);
  camera.lookAt(0, 0, 0);
  bowl.quaternion.copy(camera.quaternion);
  const target = new WebGLRenderTarget(1, 1, { samples: 4 });
  return {
    photograph(surface, width, height) {
      wear(rows, 0, surface);
      target.setSize(width, height);
      const into = gl.getRenderTarget();
      gl.setRenderTarget(target);
      gl.setClearAlpha(0);
      gl.clear();
      gl.render(scene, camera);
      const picture = uprightPixels(gl, target, width, height);
      gl.setRenderTarget(into);
      return picture;
    },
    dispose() {
      for (const done of [rows.texture, material, bowl.geometry, target]) done.dispose();
    },
  };
}
