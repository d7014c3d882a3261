/**
 * Naming a colour. Parents: oracle (a plain search of the whole list) and derived (a listed
 * colour's own name). The block list is checked by names that must and must not pass.
 */
import { colornames } from 'color-name-list/short';
import { describe, expect, it } from 'vitest';
import { ciede2000 } from '../../src/colour/difference.ts';
import { nearestName } from '../../src/colour/name.ts';
import { labFromHex } from '../../src/colour/srgb.ts';
import { isSuited } from '../../src/colour/table/unsuited.ts';
import { drawFrom } from '../../src/ground/draw.ts';
import { asLab } from '../../src/ground/unit.ts';

const shown = colornames.filter(({ name }) => isSuited(name));

describe('the nearest name of a colour', () => {
  it('is its own for every twentieth colour of the list, with no difference', async () => {
    for (const { name, hex } of shown.filter((_, index) => index % 20 === 0)) {
      const nearest = await nearestName(labFromHex(hex));
      expect(nearest.deltaE).toBeCloseTo(0, 9);
      const sameHex = shown.filter((one) => one.hex === hex).map((one) => one.name);
      expect(sameHex).toContain(nearest.name);
      expect(sameHex).toContain(name);
    }
  });

  const seed = 77;
  it(`is what a plain search of the whole list finds, for 200 random colours (seed ${seed})`, async () => {
    const draw = drawFrom(seed);
    const labs = shown.map(({ hex }) => labFromHex(hex));
    for (let trial = 0; trial < 200; trial++) {
      const lab = asLab(
        draw.uniform() * 100,
        draw.uniform() * 200 - 100,
        draw.uniform() * 200 - 100,
      );
      const least = Math.min(...labs.map((its) => ciede2000(lab, its)));
      expect((await nearestName(lab)).deltaE).toBe(least);
    }
  });

  it('is found at the ends of the lightness scale and beyond any listed colour', async () => {
    for (const lab of [asLab(0, 0, 0), asLab(100, 0, 0), asLab(50, 150, -150)]) {
      const { name, deltaE } = await nearestName(lab);
      expect(shown.map((one) => one.name)).toContain(name);
      expect(Number.isFinite(deltaE)).toBe(true);
    }
  });
});

describe('names a builder is not shown', () => {
  it('leave at least four in five of the list', () => {
    expect(shown.length).toBeGreaterThan(0.8 * colornames.length);
  });

  const kept = ['Acorn', 'Brick Red', 'Bronze', 'Cherry', 'Gunmetal', 'Olive', 'Sky', 'Wheat'];
  it.each(kept)('%s is an everyday colour and stays', (name) => {
    expect(shown.map((one) => one.name)).toContain(name);
  });

  const left = [
    ['a vehicle', 'Mustang'],
    ['a vehicle', 'Jaguar'],
    ['a vehicle', 'Thunderbird'],
    ['a person', 'Cousteau'],
    ['a person', 'Monet Magic'],
    ['an invented person', 'Batman'],
    ['a product', 'Orangina'],
    ['a product', 'Mountain Dew'],
    ['a game', 'Pac-Man'],
    ['a band', 'Pink Floyd'],
    ['a crude joke', 'Nipple'],
  ] as const;
  it.each(left)('%s: %s is in the list and is left out', (_, name) => {
    expect(colornames.map((one) => one.name)).toContain(name);
    expect(isSuited(name)).toBe(false);
  });
});
