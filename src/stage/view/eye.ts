/** A pose of the camera, in full-size millimetres, as three's camera, in metres. */
import { PerspectiveCamera } from 'three';
import { eyeOf, type Pose } from '../camera/pose.ts';

const metresPerMm = 1 / 1000;

/** Sets `camera` to look as `pose` says into a view of this aspect (width over height). */
export function lookAs(camera: PerspectiveCamera, pose: Pose, aspect: number): PerspectiveCamera {
  const [x, y, z] = eyeOf(pose);
  const [tx, ty, tz] = pose.target;
  const distance = pose.distanceMm * metresPerMm;
  camera.fov = pose.fieldDegrees;
  camera.aspect = aspect;
  camera.near = Math.max(0.05, distance - 6);
  camera.far = distance + 12;
  camera.position.set(x * metresPerMm, y * metresPerMm, z * metresPerMm);
  camera.up.set(0, 1, 0);
  camera.lookAt(tx * metresPerMm, ty * metresPerMm, tz * metresPerMm);
  camera.updateProjectionMatrix();
  camera.updateMatrixWorld();
  return camera;
}

export const newEye = (): PerspectiveCamera => new PerspectiveCamera();
