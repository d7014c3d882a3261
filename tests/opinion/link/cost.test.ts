/** What makes a link long: measured on links made without it, and against what no packer can beat. */
import { createHash } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import type { Build } from '../../../src/build/build.ts';
import { costsOf } from '../../../src/opinion/link/cost.ts';
import { linkOf, roundFrom } from '../../../src/opinion/link/link.ts';
import { type Asking, differingParts, roundOf } from '../../../src/opinion/round.ts';
import { demo } from '../reply/arbitrary.ts';

/** Text of 64 letters without any order: SHA-256 of counted numbers, six bits a character. */
const noise = (characters: number): string =>
  Array.from({ length: Math.ceil(characters / 43) }, (_, at) =>
    createHash('sha256').update(`cost ${at}`).digest('base64url'),
  )
    .join('')
    .slice(0, characters);

const underLamp: Build = { ...demo, viewing: { ...demo.viewing, light: 'A' } };
const allAsked: Asking = { withStory: true, parts: differingParts(demo) };

describe('What costs most in a link', () => {
  it('is what the link without it is shorter by, and that link opens as what it asks', () => {
    const whole = linkOf(roundOf(underLamp, allAsked)).length;
    const costs = costsOf(underLamp, allAsked);
    expect(new Set(costs.map(({ kind }) => kind)).size).toBe(4);
    for (const { asking, characters } of costs) {
      const without = roundOf(underLamp, asking);
      expect(linkOf(without)).toHaveLength(whole - characters);
      expect(roundFrom(linkOf(without))).toEqual(without);
    }
  });

  it('comes first, and what saves nothing does not come at all', () => {
    const characters = costsOf(underLamp, allAsked).map((cost) => cost.characters);
    expect(characters).toEqual([...characters].sort((a, b) => b - a));
    expect(Math.min(...characters)).toBeGreaterThan(0);
  });

  it('is at least what is in it: text without order packs into no fewer characters', () => {
    // Shannon 1948: 1,200 letters of 64 that are equally likely hold 7,200 bits, and a character of
    // a link holds 6. Luck of 1 in 2^64 is 64 bits less. Written as they are, bytes of
    // 8 bits, they take 1,600.
    const [cost] = costsOf({ ...demo, story: noise(1200) }, allAsked);
    expect(cost?.kind).toBe('story');
    expect(cost?.characters).toBeGreaterThanOrEqual(1200 - 64 / 6);
    expect(cost?.characters).toBeLessThan((1200 * 8) / 6);
  });

  it('leaves viewers two to choose from', () => {
    const { alternatives } = demo;
    for (const count of [2, 3]) {
      const asked = alternatives.slice(0, count).map(({ id }) => id);
      const dropped = costsOf(demo, { alternatives: asked }).filter(
        ({ kind }) => kind === 'alternative',
      );
      expect(dropped).toHaveLength(count > 2 ? count : 0);
      for (const { asking } of dropped) {
        expect(roundOf(demo, asking).build.alternatives).toHaveLength(2);
      }
    }
  });

  it('tells of spectra where a light other than daylight needs them, and drops nothing else', () => {
    const spectra = (build: Build) => costsOf(build).find(({ kind }) => kind === 'spectra');
    expect(spectra(demo)).toBeUndefined();
    const without = roundOf(underLamp, spectra(underLamp)?.asking);
    expect(JSON.stringify(without)).not.toContain('"spectrum"');
    const other = ({ build }: typeof without) => ({
      ...build,
      finishes: build.finishes.map(
        ({ colour: _colour, face: _face, flop: _flop, ...rest }) => rest,
      ),
    });
    expect(other(without)).toEqual(other(roundOf(underLamp)));
  });

  it('calls an alternative by its letter and the name its builder gave it', () => {
    const { name } = demo.alternatives[1]!;
    const told = costsOf(demo).map(({ what, loses }) => [what, loses]);
    expect(told).toContainEqual([`alternative B, “${name}”`, 'the choice of B']);
  });
});
