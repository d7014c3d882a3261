/**
 * Do the room's quick formulas tell the light that is there? Oracle: the panel cut into many small
 * pieces, each giving cos θ · cos θ′ / (π d²) of its area, as radiometry defines the share of a
 * Lambertian source that arrives (view factor; any handbook of radiation, from memory).
 *
 * The closed form takes the whole panel for one direction and lets light wrap round the corner, so
 * it holds where a panel is far off against its size or faced squarely; limits are stated beside
 * each check.
 */
import { describe, expect, it } from 'vitest';
import { drawFrom } from '../../../src/ground/draw.ts';
import {
  add,
  cross,
  dot,
  lengthOf,
  normalize,
  scale,
  subtract,
  type Vector3,
} from '../../../src/ground/vector.ts';
import {
  brightened,
  domeRadiance,
  evenRoom,
  formFactor,
  type Panel,
  type Room,
  raysOf,
  softboxRoom,
  whiteAt,
} from '../../../src/stage/light/room.ts';

/** Share of the panel's radiance that arrives, piece by piece; panels shine both ways. */
function byPieces(panel: Panel, place: Vector3, normal: Vector3, pieces = 60): number {
  const facing = cross(panel.across, panel.along);
  const area = (4 * panel.halfAcross * panel.halfAlong) / (pieces * pieces);
  let sum = 0;
  for (let i = 0; i < pieces; i++) {
    for (let j = 0; j < pieces; j++) {
      const aside = (((i + 0.5) / pieces) * 2 - 1) * panel.halfAcross;
      const ahead = (((j + 0.5) / pieces) * 2 - 1) * panel.halfAlong;
      const point = add(panel.centre, add(scale(panel.across, aside), scale(panel.along, ahead)));
      const way = subtract(point, place);
      const distance = lengthOf(way);
      const toward = scale(way, 1 / distance);
      const on = Math.max(0, dot(normal, toward));
      sum += (on * Math.abs(dot(facing, toward)) * area) / (Math.PI * distance * distance);
    }
  }
  return sum;
}
const panel = (half: number, height: number, along = half): Panel => ({
  centre: [0, height, 0],
  across: [1, 0, 0],
  halfAcross: half,
  along: [0, 0, 1],
  halfAlong: along,
  radiance: 1,
});
const up: Vector3 = [0, 1, 0];
const origin: Vector3 = [0, 0, 0];

describe('the share of a panel that arrives', () => {
  it('is that of its pieces within 5 % for a square panel faced squarely', () => {
    for (const [half, height] of [
      [0.2, 4],
      [0.5, 3],
      [1, 4],
      [1, 2],
    ] as const) {
      const exact = byPieces(panel(half, height), origin, up);
      expect(formFactor(panel(half, height), origin, up) / exact).toBeCloseTo(1, 1);
      expect(Math.abs(formFactor(panel(half, height), origin, up) / exact - 1)).toBeLessThan(0.05);
    }
  });

  it('comes to 1 against a panel that fills the sky and to none far away', () => {
    expect(formFactor(panel(1000, 1), origin, up)).toBeCloseTo(1, 3);
    expect(formFactor(panel(0.5, 1000), origin, up)).toBeLessThan(1e-6);
  });

  it('falls with the square of the distance once that is large', () => {
    const ratio = formFactor(panel(0.3, 10), origin, up) / formFactor(panel(0.3, 20), origin, up);
    expect(ratio).toBeCloseTo(4, 1);
  });

  it('follows the slant of the surface up to 60° within the light that wraps round', () => {
    // Wrapped light is (cos + 0.15) / 1.15 in place of cos: derived, at most 0.15 / 1.15 off.
    for (const degrees of [0, 20, 40, 60]) {
      const angle = (degrees * Math.PI) / 180;
      const normal: Vector3 = [Math.sin(angle), Math.cos(angle), 0];
      const exact = byPieces(panel(0.4, 4), origin, normal);
      const quick = formFactor(panel(0.4, 4), origin, normal);
      const square = byPieces(panel(0.4, 4), origin, up);
      expect((quick - exact) / square).toBeLessThan(0.15 / 1.15 + 0.01);
      expect((quick - exact) / square).toBeGreaterThan(-0.02);
    }
  });

  it('is none for a surface turned away', () => {
    expect(formFactor(panel(0.4, 4), origin, [0, -1, 0])).toBe(0);
  });

  it('keeps within a third of the pieces for the room’s own long box, from under it', () => {
    // 5.4 m long at 4.3 m: the ends are half as far again as the middle. A limit of the closed form.
    const [box] = softboxRoom.panels;
    const exact = byPieces(box!, [0, 1, 0], up);
    expect(Math.abs(formFactor(box!, [0, 1, 0], up) / exact - 1)).toBeLessThan(1 / 3);
  });
});

describe('a perfect white', () => {
  it('is 1 in even light, wherever it lies and faces', () => {
    const draw = drawFrom(3);
    for (let k = 0; k < 50; k++) {
      const normal = normalize([draw.uniform() - 0.5, draw.uniform() - 0.5, draw.uniform() - 0.5]);
      expect(
        whiteAt(evenRoom, [draw.uniform(), draw.uniform(), draw.uniform()], normal),
      ).toBeCloseTo(1, 12);
      expect(domeRadiance(evenRoom, normal)).toBeCloseTo(1, 12);
    }
  });

  it('lies flat on a car under the lights near 1, within 15 %, and goes with their strength', () => {
    // What room.ts promises of exposure, from the bench up to a bonnet.
    for (const place of [origin, [0, 0.8, 0], [0, 0.8, 1.5], [0, 1, 0]] as const) {
      const lying = whiteAt(softboxRoom, place, up);
      expect(Math.abs(lying - 1)).toBeLessThan(0.15);
      expect(whiteAt(brightened(softboxRoom, 2), place, up)).toBeCloseTo(2 * lying, 12);
    }
  });
});

describe('directions that stand for a room', () => {
  /** Light on a surface from the rays: each stands for π of solid angle, cosine apart. */
  const fromRays = (room: Room, normal: Vector3): number =>
    raysOf(room, 64).reduce(
      (sum, { toward, weight }) => sum + weight * Math.max(0, dot(normal, toward)),
      0,
    );

  it('are as many as asked for, of length 1, and all give light', () => {
    for (const room of [evenRoom, softboxRoom]) {
      const rays = raysOf(room, 64);
      expect(rays.length).toBe(64);
      for (const { toward, weight } of rays) {
        expect(lengthOf(toward)).toBeCloseTo(1, 9);
        expect(weight).toBeGreaterThan(0);
      }
    }
  });

  it('add up to the light of an even room within 3 %, whichever way a surface faces', () => {
    for (const normal of [up, [1, 0, 0], [0, 0, 1], [0, -1, 0], normalize([1, 2, -1])] as const) {
      expect(Math.abs(fromRays(evenRoom, normal) - 1)).toBeLessThan(0.03);
    }
  });

  it('add up to the light of the room within 15 % of panels by pieces and dome by sum', () => {
    // Exact dome: cosine-weighted mean of its radiance over 20,000 even directions.
    const domeOn = (normal: Vector3): number => {
      const count = 20_000;
      let sum = 0;
      for (let k = 0; k < count; k++) {
        const y = 1 - (2 * (k + 0.5)) / count;
        const turn = k * 2.399963;
        const around = Math.sqrt(1 - y * y);
        const toward: Vector3 = [around * Math.cos(turn), y, around * Math.sin(turn)];
        sum += domeRadiance(softboxRoom, toward) * Math.max(0, dot(normal, toward));
      }
      return (sum * 4) / count;
    };
    for (const normal of [up, [1, 0, 0], [-1, 0, 0], [0, 0, 1]] as const) {
      const panels = softboxRoom.panels.reduce(
        (sum, one) => sum + one.radiance * byPieces(one, origin, normal),
        0,
      );
      const exact = panels + domeOn(normal);
      expect(Math.abs(fromRays(softboxRoom, normal) / exact - 1), normal.join()).toBeLessThan(0.15);
    }
  });
});
