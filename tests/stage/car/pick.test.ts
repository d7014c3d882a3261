/**
 * Is what lies under the pointer what is seen there? Oracle: every triangle projected by the
 * turntable worked out by hand (`camera/projected.ts`), the nearest opaque one that covers the
 * point; no line of sight is used.
 */
import { beforeAll, describe, expect, it } from 'vitest';
import { cornerOf, type Mesh, partOf } from '../../../src/car/mesh.ts';
import { drawFrom } from '../../../src/ground/draw.ts';
import { poseAt } from '../../../src/stage/camera/places.ts';
import { type Pose, viewFrame } from '../../../src/stage/camera/pose.ts';
import { type Met, metAlong, sightlineThrough } from '../../../src/stage/car/pick.ts';
import { readRoadster } from '../../browser/stage/roadster.ts';
import { box, meshFrom, quad } from '../../car/shape.ts';
import { projected } from '../camera/projected.ts';

let roadster: Mesh;
beforeAll(async () => {
  roadster = await readRoadster();
});

const picked = (mesh: Mesh, pose: Pose, aspect: number, x: number, y: number): Met | undefined =>
  metAlong(mesh, sightlineThrough(viewFrame(pose), pose.fieldDegrees, aspect, x, y));

/** Part and depth of what covers each point of the view, by projection; NaN depth for nothing. */
function covering(mesh: Mesh, pose: Pose, aspect: number, points: readonly (readonly number[])[]) {
  const nearest = points.map(() => ({ part: -1, depth: Number.POSITIVE_INFINITY }));
  for (let triangle = 0; triangle < mesh.nodeOf.length; triangle++) {
    const part = partOf(mesh, triangle);
    if (mesh.parts[part]!.isGlass) continue;
    const [a, b, c] = [0, 1, 2].map((k) => projected(pose, cornerOf(mesh, triangle, k), aspect));
    const twice = (b!.x - a!.x) * (c!.y - a!.y) - (c!.x - a!.x) * (b!.y - a!.y);
    if (Math.abs(twice) < 1e-14) continue;
    for (const [at, [x, y]] of points.entries()) {
      const u = ((x! - a!.x) * (c!.y - a!.y) - (c!.x - a!.x) * (y! - a!.y)) / twice;
      const v = ((b!.x - a!.x) * (y! - a!.y) - (x! - a!.x) * (b!.y - a!.y)) / twice;
      if (u < 0 || v < 0 || u + v > 1) continue;
      // One over depth is what goes evenly over a picture.
      const depth = 1 / ((1 - u - v) / a!.depth + u / b!.depth + v / c!.depth);
      if (depth < nearest[at]!.depth) nearest[at] = { part, depth };
    }
  }
  return nearest;
}

describe('what lies under the pointer', () => {
  for (const place of ['front', 'side', 'cabin']) {
    it(`of the roadster at its ${place} is the nearest triangle that covers the point`, () => {
      const aspect = 1.5;
      const pose = poseAt(roadster, place, aspect);
      const draw = drawFrom(17);
      const points = Array.from({ length: 60 }, () => [
        (draw.uniform() * 2 - 1) * 0.9,
        (draw.uniform() * 2 - 1) * 0.8,
      ]);
      const expected = covering(roadster, pose, aspect, points);
      let onCar = 0;
      for (const [at, [x, y]] of points.entries()) {
        const met = picked(roadster, pose, aspect, x!, y!);
        const { part, depth } = expected[at]!;
        expect(met?.part ?? -1, `point ${x}, ${y}`).toBe(part);
        if (met === undefined) continue;
        onCar++;
        const spot = projected(pose, met.place, aspect);
        expect(spot.depth / depth).toBeCloseTo(1, 5);
        expect(spot.x).toBeCloseTo(x!, 5);
        expect(spot.y).toBeCloseTo(y!, 5);
      }
      expect(onCar).toBeGreaterThan(15);
    });
  }

  it('looks through glass, and meets nothing beside the car or behind the eye', () => {
    const ahead: Pose = {
      target: [0, 500, 0],
      azimuthDegrees: 0,
      elevationDegrees: 0,
      distanceMm: 5000,
      fieldDegrees: 22,
    };
    const pane = quad(
      'pane',
      [
        [-300, 200, 1000],
        [300, 200, 1000],
        [300, 800, 1000],
        [-300, 800, 1000],
      ],
      { isGlass: true },
    );
    const mesh = meshFrom([
      pane,
      box('body', [-200, 300, -100], [200, 700, 100]),
      box('behind', [-200, 300, 7000], [200, 700, 7200]),
    ]);
    const met = picked(mesh, ahead, 1, 0, 0);
    expect(mesh.parts[met!.part]!.id).toBe('body');
    expect(met!.place[2]).toBeCloseTo(100, 6);
    expect(picked(mesh, ahead, 1, 0.9, 0.9)).toBeUndefined();
  });
});
