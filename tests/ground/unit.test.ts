/** Measured kinds: the plain value underneath, and no mixing past the compiler. */
import { describe, expect, expectTypeOf, it } from 'vitest';
import {
  asLab,
  asLinearRgb,
  asReflectance,
  asXyz,
  type Lab,
  type LinearRgb,
  type Reflectance,
  type Xyz,
} from '../../src/ground/unit.ts';

describe('measured kinds', () => {
  it('are plain numbers underneath, so they can be stored and sent', () => {
    expect(JSON.stringify(asLab(50, -10, 20))).toBe('[50,-10,20]');
    expect(asXyz(0.95, 1, 1.09)[1]).toBe(1);
    expect([...asLinearRgb(0, 0.5, 1)]).toEqual([0, 0.5, 1]);
  });

  it('wrap a spectrum without copying it', () => {
    const bands = new Float64Array(41);
    expect(asReflectance(bands)).toBe(bands);
  });

  it('do not pass for one another', () => {
    expectTypeOf<Lab>().not.toExtend<Xyz>();
    expectTypeOf<Xyz>().not.toExtend<LinearRgb>();
    expectTypeOf<LinearRgb>().not.toExtend<Lab>();
    expectTypeOf<readonly [number, number, number]>().not.toExtend<Lab>();
    expectTypeOf<Float64Array>().not.toExtend<Reflectance>();
    expectTypeOf<Lab>().toExtend<readonly [number, number, number]>();
  });
});
