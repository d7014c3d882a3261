/**
 * Zhai, Q. & Luo, M. R. (2018). Study of chromatic adaptation via neutral white matches on
 * different viewing media. Optics Express 26(6), 7724–7739, doi 10.1364/OE.26.007724: two-step
 * adaptation with the CAT16 matrix. Two examples as asserted to seven decimals by the unit tests
 * of a public BSD-3 colour library; transcribed by the project. XYZ here as printed, Y of white 100.
 */
import { describe, expect, it } from 'vitest';
import { adaptedXyz } from '../../src/colour/adaptation.ts';
import { asXyz, type Xyz } from '../../src/ground/unit.ts';

const examples = [
  {
    from: asXyz(48.9, 43.62, 6.25),
    fromWhite: asXyz(109.85, 100, 35.585),
    to: asXyz(40.37398343, 43.69426311, 20.51733764),
    toWhite: asXyz(95.047, 100, 108.883),
    between: asXyz(100, 100, 100),
    fromDegree: 0.9407,
    toDegree: 0.98,
  },
  {
    from: asXyz(52.034, 58.824, 23.703),
    fromWhite: asXyz(92.288, 100, 38.775),
    to: asXyz(56.77130011, 58.81317888, 64.66922808),
    toWhite: asXyz(105.432, 100, 137.392),
    between: asXyz(97.079, 100, 141.798),
    fromDegree: 0.6709,
    toDegree: 0.5331,
  },
];

/**
 * The first of the two steps, to the white in between, adapted by a degree: the transform is
 * linear, so a part-way adaptation is a mix of the fully adapted and the unadapted colour.
 */
const halfWay = (xyz: Xyz, white: Xyz, between: Xyz, degree: number): number[] =>
  adaptedXyz(xyz, white, between).map((full, axis) => degree * full + (1 - degree) * xyz[axis]!);

describe('published corresponding colours', () => {
  examples.forEach((example, index) => {
    it(`example ${index + 1}: both colours meet at the white in between`, () => {
      const { from, fromWhite, to, toWhite, between, fromDegree, toDegree } = example;
      const here = halfWay(from, fromWhite, between, fromDegree);
      const there = halfWay(to, toWhite, between, toDegree);
      here.forEach((value, axis) => {
        expect(value).toBeCloseTo(there[axis]!, 6);
      });
    });
  });
});
