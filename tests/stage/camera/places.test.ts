/**
 * Does every place hold what it frames, fill the view with it and put it in the middle? Oracle:
 * every corner of every triangle, projected by hand (projected.ts). The angles and margins tested
 * are our judgement, stated in the test titles.
 */
import { readFile } from 'node:fs/promises';
import { beforeAll, describe, expect, it } from 'vitest';
import { readGlb } from '../../../src/car/glb.ts';
import { boundsOf, facetOf, type Mesh, middleOf, partOf } from '../../../src/car/mesh.ts';
import { limitsOf } from '../../../src/stage/camera/frame.ts';
import { framingPart, placesOf, poseAt } from '../../../src/stage/camera/places.ts';
import { orbited, type Pose } from '../../../src/stage/camera/pose.ts';
import { box, meshFrom } from '../../car/shape.ts';
import { edges, eyeBy, projected } from './projected.ts';

const aspects = [0.7, 1.3, 2.2];
let car: Mesh;
beforeAll(async () => {
  car = await readGlb(
    new Uint8Array(await readFile(new URL('../../../models/roadster.glb', import.meta.url))),
  );
});

const groupOf = (mesh: Mesh, triangle: number): string => mesh.parts[partOf(mesh, triangle)]!.group;
/** What a place frames, said in the test's own words. */
const isFramed =
  (placeId: string) =>
  (triangle: number): boolean => {
    if (placeId === 'cabin') return groupOf(car, triangle) === 'cabin';
    if (placeId !== 'wheel') return true;
    const [x, , z] = facetOf(car, triangle).centroid;
    return groupOf(car, triangle) === 'wheels' && x > 0 && z > 0;
  };
const partIs =
  (id: string, isThere: (centroid: readonly number[]) => boolean = () => true) =>
  (triangle: number): boolean =>
    car.parts[partOf(car, triangle)]!.id === id && isThere(facetOf(car, triangle).centroid);

describe('the places of the roadster', () => {
  it('begin at the front and lead round it, over it, into it and to a wheel', () => {
    expect(placesOf(car)[0]).toEqual({ id: 'front', name: 'Front' });
    expect(
      placesOf(car)
        .map(({ id }) => id)
        .sort(),
    ).toEqual(['above', 'cabin', 'front', 'nose', 'rear', 'side', 'tail', 'wheel']);
  });

  it.each(aspects)(
    'hold all they frame, in the middle, 6 % from the edges, at aspect %f',
    (aspect) => {
      for (const { id } of placesOf(car)) {
        const { left, right, bottom, top } = edges(
          car,
          poseAt(car, id, aspect),
          aspect,
          isFramed(id),
        );
        expect(Math.max(right, top, -left, -bottom), id).toBeLessThanOrEqual(0.885);
        expect(Math.max(right - left, top - bottom) / 2, id).toBeGreaterThanOrEqual(0.85);
        expect(Math.abs(left + right), id).toBeLessThan(0.01);
        expect(Math.abs(bottom + top), id).toBeLessThan(0.01);
      }
    },
  );

  it('look from low, as at a bench, with the eye above the table', () => {
    for (const id of ['front', 'rear', 'side', 'nose', 'tail']) {
      const pose = poseAt(car, id, 1.3);
      expect(pose.elevationDegrees).toBeLessThanOrEqual(14);
      expect(eyeBy(pose)[1]).toBeGreaterThan(0);
    }
  });

  it('lay the car lengthwise across the view from the side and from above', () => {
    for (const id of ['side', 'above']) {
      const pose = poseAt(car, id, 1.3);
      const [nose, tail] = [
        projected(pose, [0, 500, 2000], 1.3),
        projected(pose, [0, 500, -2000], 1.3),
      ];
      expect(Math.abs(nose.x - tail.x), id).toBeGreaterThan(1.5);
      expect(Math.abs(nose.y - tail.y), id).toBeLessThan(0.1);
    }
  });

  it('lie within what hands may reach', () => {
    const { within, nearestMm, tallestMm } = limitsOf(car);
    for (const aspect of aspects) {
      for (const { id } of placesOf(car)) {
        const { target, distanceMm, fieldDegrees } = poseAt(car, id, aspect);
        for (const axis of [0, 1, 2]) {
          expect(target[axis], id).toBeGreaterThanOrEqual(within.low[axis]!);
          expect(target[axis], id).toBeLessThanOrEqual(within.high[axis]!);
        }
        expect(distanceMm, id).toBeGreaterThan(nearestMm);
        const tall = 2 * distanceMm * Math.tan((fieldDegrees * Math.PI) / 360);
        expect(tall, id).toBeLessThan(tallestMm);
      }
    }
  });
});

describe('places of other cars', () => {
  it('leave out the cabin and the wheel where there is none, and refuse them by name', () => {
    const block = meshFrom([box('body', [-500, 0, -1000], [500, 600, 1000])]);
    expect(placesOf(block).map(({ id }) => id)).not.toContain('cabin');
    expect(placesOf(block).map(({ id }) => id)).not.toContain('wheel');
    expect(() => poseAt(block, 'cabin', 1)).toThrow(/place cabin.*front/);
    expect(() => poseAt(block, 'moon', 1)).toThrow(/place moon/);
    expect(() => poseAt(block, 'front', 0)).toThrow(/aspect 0/);
  });
});

describe('bringing a part close', () => {
  const degreesBetween = (pose: Pose, way: readonly number[]): number => {
    const eye = eyeBy(pose).map((value, axis) => (value - pose.target[axis]!) / pose.distanceMm);
    return (
      (Math.acos(eye.reduce((sum, value, axis) => sum + value * way[axis]!, 0)) * 180) / Math.PI
    );
  };

  it.each(aspects)(
    'shows the nearest caliper, and from its own outer side, at aspect %f',
    (aspect) => {
      for (const turn of [0, 60, 120, 180, 240, 300]) {
        const from = orbited(poseAt(car, 'front', aspect), turn, 0);
        const pose = framingPart(car, ['calipers'], from, aspect);
        const [ex, , ez] = eyeBy(from);
        // The side and the end the eye is on; the wheels are 2.5 m apart, the tracks 1.5 m.
        const [isLeft, isFront] = [ex > 0, ez > 0];
        expect(pose.target[0] > 0, `turned by ${turn}`).toBe(isLeft);
        expect(pose.target[2] > 0, `turned by ${turn}`).toBe(isFront);
        expect(degreesBetween(pose, [isLeft ? 1 : -1, 0, 0])).toBeLessThanOrEqual(50.01);
        const here = partIs('calipers', ([x, , z]) => x! > 0 === isLeft && z! > 0 === isFront);
        const { left, right, bottom, top } = edges(car, pose, aspect, here);
        expect(Math.max(right - left, top - bottom) / 2).toBeCloseTo(0.45, 2);
      }
    },
  );

  it('goes to the place that is pointed at, though another is nearer', () => {
    const from = poseAt(car, 'front', 1.3);
    const pose = framingPart(car, ['calipers'], from, 1.3, [-740, 380, -1350]);
    expect(pose.target[0]).toBeLessThan(-600);
    expect(pose.target[2]).toBeLessThan(-1200);
  });

  it('looks into the cabin from above', () => {
    const cabin = car.parts.filter(({ group }) => group === 'cabin').map(({ id }) => id);
    expect(cabin.length).toBeGreaterThan(5);
    for (const id of cabin) {
      const pose = framingPart(car, [id], poseAt(car, 'rear', 1.3), 1.3);
      expect(pose.elevationDegrees, id).toBeGreaterThanOrEqual(35);
    }
  });

  it('walks round to a part that is on the far side: tail lamps from the nose, the grille from the tail', () => {
    const lamps = framingPart(car, ['tail-lamps'], poseAt(car, 'nose', 1.3), 1.3);
    expect(eyeBy(lamps)[2]).toBeLessThan(boundsOf(car, partIs('tail-lamps'))!.low[2]);
    const grille = framingPart(car, ['grille'], poseAt(car, 'tail', 1.3), 1.3);
    expect(eyeBy(grille)[2]).toBeGreaterThan(middleOf(boundsOf(car, partIs('grille'))!)[2]);
  });

  it('stays at the present direction for a part that faces the eye already', () => {
    const from = poseAt(car, 'front', 1.3);
    const pose = framingPart(car, ['mirrors'], from, 1.3);
    expect(pose.azimuthDegrees).toBeCloseTo(38, 6);
    expect(pose.elevationDegrees).toBeCloseTo(12, 6);
  });

  it('comes no nearer than 400 mm to a small thing, and shows the body with the whole car', () => {
    const from = poseAt(car, 'front', 1.3);
    const badge = framingPart(car, ['badges'], from, 1.3);
    const nearest = car.nodes.map(
      (_, node) =>
        edges(car, badge, 1.3, (t) => car.nodeOf[t] === node && partIs('badges')(t)).nearest,
    );
    expect(Math.min(...nearest.filter((depth) => depth > 0))).toBeGreaterThanOrEqual(399.5);
    const body = edges(car, framingPart(car, ['body'], from, 1.3), 1.3);
    expect(Math.max(body.right - body.left, body.top - body.bottom) / 2).toBeGreaterThan(0.85);
  });

  it('holds every part of a set: spokes and caliper of the same wheel', () => {
    const pose = framingPart(car, ['calipers', 'wheel-spokes'], poseAt(car, 'front', 1.3), 1.3);
    for (const id of ['calipers', 'wheel-spokes']) {
      const { left, right, bottom, top } = edges(
        car,
        pose,
        1.3,
        partIs(id, ([x, , z]) => x! > 0 && z! > 0),
      );
      expect(Math.max(right, top, -left, -bottom)).toBeLessThan(0.46);
    }
  });

  it('tells two plates apart that are one part, and shows each from its front', () => {
    const plates = meshFrom([
      box('body', [-500, 100, -1000], [500, 600, 1000]),
      box('plate', [-200, 200, 1001], [200, 300, 1010]),
      box('plate', [-200, 200, -1010], [200, 300, -1001]),
    ]);
    const side = poseAt(plates, 'side', 1.3);
    const front = framingPart(plates, ['plate'], orbited(side, -20, 0), 1.3);
    expect(degreesBetween(front, [0, 0, 1])).toBeLessThanOrEqual(50.01);
    const rear = framingPart(plates, ['plate'], orbited(side, 20, 0), 1.3);
    expect(degreesBetween(rear, [0, 0, -1])).toBeLessThanOrEqual(50.01);
  });

  it('refuses parts that the car has not, by name', () => {
    const from = poseAt(car, 'front', 1.3);
    expect(() => framingPart(car, ['propeller'], from, 1.3)).toThrow(/propeller/);
  });
});
