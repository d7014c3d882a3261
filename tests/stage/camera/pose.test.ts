/**
 * Does the camera move as a hand and a walk round a table would have it? Oracle: positions by the
 * definition of azimuth and elevation, worked out again in projected.ts. Seeds are fixed.
 */
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  between,
  eyeOf,
  type Limits,
  orbited,
  type Pose,
  panned,
  viewFrame,
  wrapped,
  zoomed,
} from '../../../src/stage/camera/pose.ts';
import { eyeBy, projected } from './projected.ts';

const seed = 20260411;
const limits: Limits = {
  nearestMm: 400,
  tallestMm: 16_000,
  within: { low: [-1000, 0, -2200], high: [1000, 1300, 2200] },
};
const front: Pose = {
  target: [0, 500, 0],
  azimuthDegrees: 38,
  elevationDegrees: 12,
  distanceMm: 9000,
  fieldDegrees: 22,
};

/** Poses a hand can reach: above the table, target within its box. */
const poses = fc
  .record({
    target: fc.tuple(
      fc.double({ min: -1000, max: 1000, noNaN: true }),
      fc.double({ min: 0, max: 1300, noNaN: true }),
      fc.double({ min: -2200, max: 2200, noNaN: true }),
    ),
    azimuthDegrees: fc.double({ min: -179.9, max: 180, noNaN: true }),
    elevationDegrees: fc.double({ min: -4, max: 88, noNaN: true }),
    distanceMm: fc.double({ min: 400, max: 30_000, noNaN: true }),
    fieldDegrees: fc.double({ min: 5, max: 40, noNaN: true }),
  })
  .map((pose): Pose => orbited(pose, 0, 0));

type Move =
  | { readonly kind: 'orbit' | 'pan'; readonly a: number; readonly b: number }
  | { readonly kind: 'zoom'; readonly factor: number };
const amount = fc.double({ min: -400, max: 400, noNaN: true });
const moves: fc.Arbitrary<Move> = fc.oneof(
  fc.record({ kind: fc.constantFrom('orbit' as const, 'pan' as const), a: amount, b: amount }),
  fc.record({
    kind: fc.constant('zoom' as const),
    factor: fc.double({ min: 0.01, max: 100, noNaN: true }),
  }),
);
const moved = (pose: Pose, move: Move): Pose => {
  if (move.kind === 'zoom') return zoomed(pose, move.factor, limits);
  if (move.kind === 'orbit') return orbited(pose, move.a, move.b);
  return panned(pose, move.a / 100, move.b / 100, limits);
};

describe('the eye', () => {
  it('stands where azimuth and elevation say: at 90° on the left of the car, at 0° before its nose', () => {
    expect(eyeOf({ ...front, azimuthDegrees: 90, elevationDegrees: 0 })[0]).toBeCloseTo(9000, 6);
    expect(eyeOf({ ...front, azimuthDegrees: 0, elevationDegrees: 0 })[2]).toBeCloseTo(9000, 6);
    expect(eyeOf({ ...front, elevationDegrees: 30 })[1]).toBeCloseTo(500 + 4500, 6);
  });

  it('has upright axes square to each other that see a point where projection by hand puts it', () => {
    fc.assert(
      fc.property(poses, fc.tuple(amount, amount, amount), (pose, offset) => {
        const { eye, right, up, forward } = viewFrame(pose);
        const by = eyeBy(pose);
        for (const axis of [0, 1, 2]) expect(eye[axis]).toBeCloseTo(by[axis]!, 5);
        expect(right[1]).toBeCloseTo(0, 9);
        expect(up[1]).toBeGreaterThan(0);
        const point = offset.map((value, axis) => pose.target[axis]! + value / 4);
        const from = point.map((value, axis) => value - eye[axis]!);
        const along = (axis: readonly number[]): number =>
          axis.reduce((sum, value, at) => sum + value * from[at]!, 0);
        const tall = Math.tan((pose.fieldDegrees * Math.PI) / 360);
        const spot = projected(pose, point, 1);
        expect(along(forward)).toBeCloseTo(spot.depth, 5);
        expect(along(right) / (spot.depth * tall)).toBeCloseTo(spot.x, 6);
        expect(along(up) / (spot.depth * tall)).toBeCloseTo(spot.y, 6);
      }),
      { seed },
    );
  });

  it('never goes under the table, over the pole, too near, too far or away from the car', () => {
    fc.assert(
      fc.property(poses, fc.array(moves, { minLength: 1, maxLength: 12 }), (start, all) => {
        const pose = all.reduce(moved, start);
        expect(pose.elevationDegrees).toBeGreaterThanOrEqual(-4);
        expect(pose.elevationDegrees).toBeLessThanOrEqual(88);
        expect(pose.azimuthDegrees).toBeGreaterThan(-180);
        expect(pose.azimuthDegrees).toBeLessThanOrEqual(180);
        expect(eyeBy(pose)[1]).toBeGreaterThan(0);
        if (all.some(({ kind }) => kind === 'zoom')) {
          expect(pose.distanceMm).toBeGreaterThanOrEqual(400);
          const tall = 2 * pose.distanceMm * Math.tan((pose.fieldDegrees * Math.PI) / 360);
          expect(tall).toBeLessThanOrEqual(16_000 * (1 + 1e-9));
        }
        for (const axis of [0, 1, 2]) {
          expect(pose.target[axis]).toBeGreaterThanOrEqual(limits.within.low[axis]!);
          expect(pose.target[axis]).toBeLessThanOrEqual(limits.within.high[axis]!);
        }
      }),
      { seed, numRuns: 500 },
    );
  });

  it('may dip a little below the level of its target, though', () => {
    expect(orbited({ ...front, distanceMm: 5000 }, 0, -90).elevationDegrees).toBeCloseTo(-4, 9);
  });
});

describe('walking round', () => {
  it('comes back after a full turn, and wraps behind the car', () => {
    expect(orbited(front, 360, 0).azimuthDegrees).toBeCloseTo(38, 9);
    expect(orbited(front, 150, 0).azimuthDegrees).toBeCloseTo(-172, 9);
    expect([wrapped(180), wrapped(-180), wrapped(-540), wrapped(725)]).toEqual([180, 180, 180, 5]);
  });
});

describe('zooming', () => {
  it('by two shows the target twice as large', () => {
    const near = zoomed(front, 2, limits);
    const point = [front.target[0], front.target[1] + 100, front.target[2]];
    // Tipped by 12°, 100 mm upright lie 100 · sin 12° = 20.8 mm nearer: 1 % off twice as large.
    const ratio = projected(near, point, 1).y / projected(front, point, 1).y;
    expect(Math.abs(ratio - 2)).toBeLessThan(0.02);
  });
});

describe('panning', () => {
  it('moves what the target showed by the share of the height that the hand moved', () => {
    const after = panned(front, 0.1, 0.05, limits);
    // The view is 2 high in its own units, so 0.1 of the height is 0.2.
    const { x, y } = projected(after, front.target, 1);
    expect(x).toBeCloseTo(0.2, 9);
    expect(y).toBeCloseTo(0.1, 9);
  });
});

describe('a glide', () => {
  it('sets out from one pose and arrives at the other', () => {
    const to = orbited(front, 100, 20);
    expect(between(front, to, 0)).toEqual(front);
    expect(between(front, to, 1)).toEqual(to);
  });

  it('takes the short way round: from 170° to −170° behind the tail, never past the nose', () => {
    const from = { ...front, azimuthDegrees: 170 };
    const to = { ...front, azimuthDegrees: -170 };
    for (const share of [0.1, 0.25, 0.5, 0.75, 0.9]) {
      expect(Math.abs(between(from, to, share).azimuthDegrees)).toBeGreaterThanOrEqual(170);
    }
  });

  it('never jumps: a step of a thousandth moves the eye by little, and turns it by under 1°', () => {
    fc.assert(
      fc.property(poses, poses, fc.integer({ min: 0, max: 999 }), (from, to, step) => {
        const [a, b] = [between(from, to, step / 1000), between(from, to, (step + 1) / 1000)];
        const turn = Math.abs(wrapped(b.azimuthDegrees - a.azimuthDegrees));
        expect(turn).toBeLessThanOrEqual(0.1801);
        // At most: half a turn at the larger distance, the way between the targets, the approach.
        const most = Math.max(from.distanceMm, to.distanceMm);
        const apart = Math.hypot(...[0, 1, 2].map((axis) => eyeBy(b)[axis]! - eyeBy(a)[axis]!));
        expect(apart).toBeLessThan(0.02 * (most + 5000));
      }),
      { seed, numRuns: 500 },
    );
  });

  it('grows things at an even rate: half way from 1 m to 9 m is 3 m', () => {
    const [near, far] = [{ ...front, distanceMm: 1000 }, front];
    expect(between(near, far, 0.5).distanceMm).toBeCloseTo(3000, 6);
  });
});
