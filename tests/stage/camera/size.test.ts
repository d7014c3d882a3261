/**
 * Is a model in the view as large as the built one would look? Worked by hand from the definition
 * of the reference pixel (CSS Values and Units, "reference pixel": 1/96 inch seen from 28 inches,
 * about 0.0213°).
 */
import { describe, expect, it } from 'vitest';
import type { Pose } from '../../../src/stage/camera/pose.ts';
import { overflowOf, trueSizePose } from '../../../src/stage/camera/size.ts';
import { box, meshFrom } from '../../car/shape.ts';
import { projected } from './projected.ts';

const side: Pose = {
  target: [0, 0, 0],
  azimuthDegrees: 90,
  elevationDegrees: 0,
  distanceMm: 5000,
  fieldDegrees: 22,
};
/** A plank 4.2 m long, which is 175 mm at 1:24, so thin that depth does not matter. */
const plank = meshFrom([box('plank', [-0.01, -0.01, -2100], [0.01, 0.01, 2100])]);
const far = { scale: 24, viewingMm: 2000, viewHeightPx: 420 };

describe('true size', () => {
  it('shows a model 175 mm long from 2 m as 235 reference pixels', () => {
    // 2 · atan(87.5 / 2000) = 5.010°; on a screen 28 inches off that is 2 · 28 · 96 · 87.5 / 2000
    // = 235.2 pixels.
    const pose = trueSizePose(side, far);
    const end = projected(pose, [0, 0, -2100], 1);
    const spanDegrees = (2 * Math.atan(87.5 / 2000) * 180) / Math.PI;
    expect(spanDegrees).toBeCloseTo(5.01, 2);
    expect(end.x * far.viewHeightPx).toBeCloseTo(235.2, 6);
  });

  it('gives one pixel in the middle of the view the angle of the reference pixel, 0.0213°', () => {
    const { fieldDegrees } = trueSizePose(side, far);
    const onePx = Math.tan((fieldDegrees * Math.PI) / 360) / (far.viewHeightPx / 2);
    expect((Math.atan(onePx) * 180) / Math.PI).toBeCloseTo(0.0213, 4);
  });

  it('puts the eye at the builder’s distance times the scale and changes nothing else', () => {
    const { fieldDegrees, ...rest } = trueSizePose(side, far);
    const { fieldDegrees: before, ...same } = side;
    expect(rest).toEqual({ ...same, distanceMm: 48_000 });
    expect(fieldDegrees).toBeLessThan(before);
  });

  it('is twice as large from half as far', () => {
    const near = projected(trueSizePose(side, { ...far, viewingMm: 1000 }), [0, 0, -2100], 1);
    const away = projected(trueSizePose(side, far), [0, 0, -2100], 1);
    expect(near.x / away.x).toBeCloseTo(2, 9);
  });

  it('tells how many times the view the model is: 235.2 of 560 pixels fit, 1176 are 2.1 times', () => {
    const aspect = 560 / 420;
    expect(overflowOf(plank, trueSizePose(side, far), aspect)).toBeCloseTo(235.2 / 560, 4);
    // From 400 mm the same plank is 2 · 2688 · 87.5 / 400 = 1176 pixels long.
    const close = trueSizePose(side, { ...far, viewingMm: 400 });
    expect(overflowOf(plank, close, aspect)).toBeCloseTo(1176 / 560, 4);
  });

  it('counts height where a model is taller than it is long', () => {
    const post = meshFrom([box('post', [-0.01, -2100, -0.01], [0.01, 2100, 0.01])]);
    expect(overflowOf(post, trueSizePose(side, far), 2)).toBeCloseTo(235.2 / 420, 4);
  });

  it('overflows without end when the eye is among the parts', () => {
    const inside = trueSizePose({ ...side, azimuthDegrees: 0 }, { ...far, viewingMm: 50 });
    expect(overflowOf(plank, inside, 1)).toBe(Infinity);
  });

  it('refuses a scale or distance that is no positive number, by name', () => {
    expect(() => trueSizePose(side, { ...far, scale: 0 })).toThrow(/scale 0.*above 0/);
    expect(() => trueSizePose(side, { ...far, viewingMm: Number.NaN })).toThrow(/viewingMm NaN/);
  });
});
