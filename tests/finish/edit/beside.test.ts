/**
 * Is a step as large as it says, and do the words fit? CIEDE2000 by colorjs.io as a second library;
 * the grey step is derived from the formula [Sharma2005]: between greys ΔE = ΔL / S_L with
 * S_L = 1 + 0.015 (L̄ − 50)² / √(20 + (L̄ − 50)²), 1.0008 between L* 50 and 51.
 */
import Color from 'colorjs.io';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { chromaOf, hueDegreesOf } from '../../../src/colour/lab.ts';
import {
  besideColour,
  type Direction,
  differenceFrom,
  differenceOf,
  directions,
  stepColour,
  stepped,
} from '../../../src/finish/edit/beside.ts';
import { asLab, type Lab } from '../../../src/ground/unit.ts';
import { finishWith, silverBase } from '../sample.ts';

// The formula takes figures whatever their white is; theirs are called `lab`, so nothing is adapted.
const apart = (one: Lab, other: Lab): number =>
  new Color('lab', [one[0], one[1], one[2]]).deltaE(
    new Color('lab', [other[0], other[1], other[2]]),
    '2000',
  );

describe('a step from a colour', () => {
  const anyLab = fc
    .tuple(
      fc.double({ min: 15, max: 85, noNaN: true }),
      fc.double({ min: -60, max: 60, noNaN: true }),
      fc.double({ min: -60, max: 60, noNaN: true }),
    )
    .map((lab) => asLab(...lab))
    .filter((lab) => chromaOf(lab) > 12);

  it('is as large as it says, by another library, whatever the colour and direction', () => {
    fc.assert(
      fc.property(
        anyLab,
        fc.constantFrom(...directions),
        fc.constantFrom(0.5, 1, 3),
        (lab, direction, deltaE) => {
          // A hundredth: the formula jumps by as much where hues lie exactly opposite.
          expect(Math.abs(apart(lab, stepped(lab, direction, deltaE)) - deltaE)).toBeLessThan(0.05);
        },
      ),
      { seed: 11, numRuns: 300 },
    );
  });

  it('of 1 from mid grey is one step of lightness', () => {
    expect(stepped(asLab(50, 0, 0), 'lighter', 1)[0]).toBeCloseTo(51.0008, 3);
    expect(stepped(asLab(50, 0, 0), 'darker', 1)[0]).toBeCloseTo(48.9992, 3);
  });

  it.each<[Direction, 0 | 1 | 2, 1 | -1]>([
    ['lighter', 0, 1],
    ['darker', 0, -1],
    ['redder', 1, 1],
    ['greener', 1, -1],
    ['yellower', 2, 1],
    ['bluer', 2, -1],
  ])('%s moves along its own axis alone', (direction, axis, sign) => {
    const from = asLab(50, 20, -10);
    const to = stepped(from, direction, 1);
    to.forEach((value, at) => {
      if (at === axis) expect(Math.sign(value - from[at]!)).toBe(sign);
      else expect(value).toBe(from[at]);
    });
  });

  it('more and less vivid keep lightness and hue', () => {
    const from = asLab(45, 30, 40);
    for (const direction of ['more vivid', 'less vivid'] as const) {
      const to = stepped(from, direction, 3);
      expect(to[0]).toBe(45);
      expect(hueDegreesOf(to)).toBeCloseTo(hueDegreesOf(from), 8);
      expect(chromaOf(to) > chromaOf(from)).toBe(direction === 'more vivid');
    }
  });

  it('a grey has no hue to strengthen, white none to lighten, and a grey is not passed through', () => {
    const grey = asLab(50, 0, 0);
    expect(stepped(grey, 'more vivid', 1)).toEqual(grey);
    expect(stepped(asLab(100, 0, 0), 'lighter', 1)).toEqual(asLab(100, 0, 0));
    expect(chromaOf(stepped(asLab(50, 0.6, 0), 'less vivid', 3))).toBeLessThan(0.01);
  });
});

describe('the difference in words', () => {
  it.each<[string, Lab, Lab, readonly Direction[]]>([
    ['only lighter', asLab(60, 10, 10), asLab(50, 10, 10), ['lighter']],
    ['only darker', asLab(40, 0, 0), asLab(50, 0, 0), ['darker']],
  ])('%s', (_, own, other, words) => {
    const difference = differenceOf(own, other);
    expect(difference.words).toEqual(words);
    expect(difference.deltaE).toBeCloseTo(apart(own, other), 6);
  });

  it('names the strongest first: a red beside a grey is redder before it is lighter', () => {
    const { words } = differenceOf(asLab(53, 30, 0), asLab(50, 0, 0));
    expect(words[0]).toBe('redder');
    expect(words).not.toContain('greener');
  });

  it('has no words for the same colour', () => {
    expect(differenceOf(asLab(50, 3, 4), asLab(50, 3, 4))).toEqual({ deltaE: 0, words: [] });
  });
});

describe('a finish told beside another', () => {
  const rowan = finishWith({ name: 'Rowan', colour: { lab: [38, 55, 32] } });

  it('takes its colour, says so in the note, and counts as read off a swatch', () => {
    const own = besideColour(
      finishWith({ provenance: { how: 'measured', deltaE: 1 }, sampleGloss60: 20 }),
      rowan,
    );
    expect(own.colour).toEqual({ lab: [38, 55, 32], light: 'D65' });
    expect(own.provenance).toEqual({ how: 'swatch', note: 'Beside Rowan' });
    expect(own.sampleGloss60).toBeUndefined();
    expect(differenceFrom(own, rowan).deltaE).toBeLessThan(0.1);
  });

  it('a second reference takes the place of the first in the note; other lines stay', () => {
    const noted = finishWith({ provenance: { how: 'swatch', note: 'By the window.' } });
    const once = besideColour(noted, rowan);
    const twice = besideColour(once, finishWith({ name: 'Plum $& skin' }));
    expect(twice.provenance.note).toBe('Beside Plum $& skin\nBy the window.');
  });

  it('three steps redder come out redder, by as much in all as they were told', () => {
    let own = besideColour(finishWith(), rowan);
    for (let press = 0; press < 3; press++) own = stepColour(own, 'redder', 1);
    const { deltaE, words } = differenceFrom(own, rowan);
    expect(words[0] === 'redder' || words[0] === 'more vivid').toBe(true);
    // Steps along one axis add up, save for the slow change of the formula along it.
    expect(deltaE).toBeGreaterThan(2.7);
    expect(deltaE).toBeLessThan(3.1);
  });

  it('face and flop of another colour do not stay behind: they become an index', () => {
    const bronze = finishWith({
      effect: 'metallic',
      colour: { lab: [48, 12, 26] },
      face: { lab: [68, 16, 36] },
      flop: { lab: [27, 8, 15] },
    });
    const own = besideColour(bronze, rowan);
    expect(own.face).toBeUndefined();
    expect(own.flop).toBeUndefined();
    // [Alman1987]: 2.69 (68 − 27)^1.11 / 48^0.86 = 5.95; lifted colours are out in the third digit.
    expect(own.flopIndex).toBeCloseTo((2.69 * 41 ** 1.11) / 48 ** 0.86, 0);
  });

  it('a dye beside a dye takes the dye, not what shows of it over its base', () => {
    const cherry = finishWith({
      effect: 'candy',
      colour: { lab: [35, 60, 30] },
      coats: 3,
      undercoats: [silverBase],
    });
    const own = besideColour(finishWith({ effect: 'candy', undercoats: [silverBase] }), cherry);
    expect(own.colour).toEqual({ lab: [35, 60, 30], light: 'D65' });
  });
});
