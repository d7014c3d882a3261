/** A room as the uniforms of the shader; panels that are not there are dark. */
import { Vector3, Vector4 } from 'three';
import { mostPanels, type Room } from './room.ts';

export interface Lamps {
  readonly uCentre: { value: Vector3[] };
  /** Unit vector and half size. */
  readonly uAcross: { value: Vector4[] };
  readonly uAlong: { value: Vector4[] };
  readonly uRadiance: { value: number[] };
  /** Zenith, horizon, far bench, floor. */
  readonly uDome: { value: Vector4 };
}

/** Uniforms of a room. */
export function lampsOf(room: Room): Lamps {
  const slots = Array.from({ length: mostPanels }, (_, at) => room.panels[at]);
  return {
    uCentre: { value: slots.map((panel) => new Vector3(...(panel?.centre ?? [0, 9, 0]))) },
    uAcross: {
      value: slots.map((panel) => new Vector4(...(panel?.across ?? [1, 0, 0]), panel?.halfAcross)),
    },
    uAlong: {
      value: slots.map((panel) => new Vector4(...(panel?.along ?? [0, 0, 1]), panel?.halfAlong)),
    },
    uRadiance: { value: slots.map((panel) => panel?.radiance ?? 0) },
    uDome: { value: new Vector4(room.zenith, room.horizon, room.far, room.floor) },
  };
}
