/**
 * What lights the car? A neutral room of our own: a long soft box overhead, a strip on either side,
 * one ahead and one behind, a dome that is lighter overhead, and a grey bench.
 *
 * Radiances are relative: 1 is a perfect white in even light. A perfect white that lies flat under
 * the box comes out near 1; highlights
 * above that roll off, so that paper keeps its tone. Lengths
 * in full-size metres about a car that stands at the origin. Light is always neutral: what a lamp
 * does to a finish is worked out from spectra, never by tinting the room. All our judgement, after
 * the grey, even surround of colour-matching practice.
 */
import { add, cross, dot, lengthOf, scale, subtract, type Vector3 } from '../../ground/vector.ts';

export interface Panel {
  readonly centre: Vector3;
  /** Unit vectors in its plane, and half its size along them, m. */
  readonly across: Vector3;
  readonly halfAcross: number;
  readonly along: Vector3;
  readonly halfAlong: number;
  readonly radiance: number;
}

export interface Room {
  readonly panels: readonly Panel[];
  /** Radiance of the dome straight up and at the horizon, of the bench far off and straight down. */
  readonly zenith: number;
  readonly horizon: number;
  readonly far: number;
  readonly floor: number;
}

/** Panels the shader has room for. */
export const mostPanels = 5;

const strip = (x: number): Panel => ({
  centre: [x, 2.1, 0],
  across: [0, 1, 0],
  halfAcross: 0.8,
  along: [0, 0, 1],
  halfAlong: 3.2,
  radiance: 4,
});
const end = (z: number): Panel => ({
  centre: [0, 4.3, z],
  across: [0, 1, 0],
  halfAcross: 0.9,
  along: [1, 0, 0],
  halfAlong: 2.4,
  radiance: 2.8,
});

/** The room every car is shown in. */
export const softboxRoom: Room = {
  panels: [
    {
      centre: [0, 4.3, 0],
      across: [1, 0, 0],
      halfAcross: 0.24,
      along: [0, 0, 1],
      halfAlong: 2.7,
      radiance: 5.6,
    },
    strip(5.2),
    strip(-5.2),
    end(7),
    end(-7),
  ],
  zenith: 0.34,
  horizon: 0.22,
  far: 0.32,
  floor: 0.16,
};

/** The same room with every light so many times as strong. */
export const brightened = (room: Room, factor: number): Room => ({
  panels: room.panels.map((panel) => ({ ...panel, radiance: panel.radiance * factor })),
  zenith: room.zenith * factor,
  horizon: room.horizon * factor,
  far: room.far * factor,
  floor: room.floor * factor,
});

/** The same light from everywhere: a perfect white comes out as 1. For checks of colour. */
export const evenRoom: Room = { panels: [], zenith: 1, horizon: 1, far: 1, floor: 1 };

/** Dome radiance from direction `toward` (unit). */
export function domeRadiance(room: Room, toward: Vector3): number {
  const up = toward[1];
  if (up < 0) return room.far + (room.floor - room.far) * smoothstep(0, 0.7, -up);
  return room.horizon + (room.zenith - room.horizon) * smoothstep(0, 0.9, up);
}

/** Share of a panel's radiance that reaches a surface at `place` facing `normal`; 0–1. */
export function formFactor(panel: Panel, place: Vector3, normal: Vector3): number {
  const way = subtract(panel.centre, place);
  const distance = lengthOf(way);
  const toward = scale(way, 1 / distance);
  const facing = Math.abs(dot(cross(panel.across, panel.along), toward));
  const area = 4 * panel.halfAcross * panel.halfAlong;
  const wrapped = Math.max(0, (dot(normal, toward) + wrap) / (1 + wrap));
  return (area * facing * wrapped) / (Math.PI * distance * distance + area);
}
/** Large lights reach a little round the corner. */
const wrap = 0.15;

/** What a perfect white at `place` facing `normal` throws back; 1 in even light. */
export function whiteAt(room: Room, place: Vector3, normal: Vector3): number {
  const sky = (room.horizon + room.zenith) / 2;
  const ground = (room.far + room.floor) / 2;
  const dome = ground + (sky - ground) * (0.5 + 0.5 * normal[1]);
  return room.panels.reduce(
    (sum, panel) => sum + panel.radiance * formFactor(panel, place, normal),
    dome,
  );
}

/** A direction light comes from, and how much of it, for working out shade. */
export interface Ray {
  readonly toward: Vector3;
  readonly weight: number;
}

/** `count` directions that stand for the room: panels by points spread over them, then the dome. */
export function raysOf(room: Room, count: number): Ray[] {
  const onPanels = room.panels.flatMap((panel, at) => panelRays(panel, at === 0 ? 10 : 4));
  const onDome = Math.max(1, count - onPanels.length);
  const rays = Array.from({ length: onDome }, (_, k): Ray => {
    const y = 1 - (2 * (k + 0.5)) / onDome;
    const turn = k * Math.PI * (3 - Math.sqrt(5));
    const around = Math.sqrt(1 - y * y);
    const toward: Vector3 = [around * Math.cos(turn), y, around * Math.sin(turn)];
    return { toward, weight: (domeRadiance(room, toward) * 4) / onDome };
  });
  return [...onPanels, ...rays].slice(0, count);
}

function panelRays(panel: Panel, count: number): Ray[] {
  return Array.from({ length: count }, (_, k) => {
    const share = ((k + 0.5) / count) * 2 - 1;
    const aside = count === 1 ? 0 : ((k % 2) - 0.5) * panel.halfAcross;
    const point = add(
      add(panel.centre, scale(panel.along, share * panel.halfAlong)),
      scale(panel.across, aside),
    );
    const distance = lengthOf(point);
    const facing = Math.abs(dot(cross(panel.across, panel.along), scale(point, 1 / distance)));
    const area = (4 * panel.halfAcross * panel.halfAlong) / count;
    const weight = (panel.radiance * area * facing) / (Math.PI * distance * distance + area);
    return { toward: scale(point, 1 / distance), weight };
  });
}

function smoothstep(low: number, high: number, value: number): number {
  const t = Math.min(1, Math.max(0, (value - low) / (high - low)));
  return t * t * (3 - 2 * t);
}
