/** Open parts that may wear anything on hand. Derived: each by hand from the demo build. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { type Build, isOpen, refOf } from '../../../src/build/build.ts';
import { widened } from '../../../src/build/edit/widen.ts';
import { parseBuild, textOf } from '../../../src/build/file.ts';
import { bottlesOf } from '../../../src/finish/finish.ts';

const demo = parseBuild(
  readFileSync(new URL('../../../src/build/demo.json', import.meta.url), 'utf8'),
);
const candidatesOf = (build: Build, id: string): readonly string[] => {
  const part = build.parts.find((one) => one.id === id);
  return part !== undefined && isOpen(part) ? part.candidates : [];
};

describe('open parts that may wear anything on hand', () => {
  it('keep their own candidates first and get every finish of their kind with nothing to buy', () => {
    const build = widened(demo, demo.finishes);
    const onHand = demo.finishes.filter((finish) => bottlesOf(finish).every((one) => one.onHand));
    const hard = onHand.filter(({ effect }) => effect !== 'ribbon' && effect !== 'flock');
    expect(hard.length).toBeLessThan(onHand.length);
    expect(onHand.length).toBeGreaterThan(3);
    expect(onHand.length).toBeLessThan(demo.finishes.length);
    for (const part of demo.parts.filter(isOpen)) {
      const candidates = candidatesOf(build, part.id);
      expect(candidates.slice(0, part.candidates.length)).toEqual(part.candidates);
      // Seat piping alone has a ribbon among its candidates, and paints besides.
      const offered = part.id === 'seat-piping' ? onHand : hard;
      expect(new Set(candidates)).toEqual(new Set([...part.candidates, ...offered.map(refOf)]));
    }
    expect(parseBuild(textOf(build)).parts).toEqual(build.parts);
  });

  // Common practice, no source: nobody paints a belt, or lays ribbon over a wheel.
  it('are offered nothing but cloth where every candidate is cloth', () => {
    const ribbons: Build = {
      ...demo,
      rules: [],
      alternatives: [],
      parts: demo.parts.map((part) =>
        part.id === 'seat-piping' ? { ...part, candidates: ['bench-drawer/oat-ribbon'] } : part,
      ),
    };
    const effects = new Map(demo.finishes.map((finish) => [refOf(finish), finish.effect]));
    const offered = candidatesOf(widened(ribbons, demo.finishes), 'seat-piping');
    expect(offered.length).toBeGreaterThan(1);
    for (const ref of offered) expect(['ribbon', 'flock']).toContain(effects.get(ref));
  });

  it('take finishes from a rack into the build, and nothing of what has to be bought', () => {
    const [model] = demo.finishes;
    const fresh = { ...model!, rack: 'drawer', id: 'fresh', name: 'Fresh' };
    const bottle = { id: 'far-away', name: 'Far away', onHand: false, leadDays: 9 };
    const build = widened(demo, [fresh, { ...fresh, id: 'bought', bottle }]);
    expect(candidatesOf(build, 'mirrors')).toEqual([
      ...candidatesOf(demo, 'mirrors'),
      'drawer/fresh',
    ]);
    expect(build.finishes.map(refOf)).toEqual([...demo.finishes.map(refOf), 'drawer/fresh']);
    expect(parseBuild(textOf(build)).finishes).toEqual(build.finishes);
  });

  it('leave settled and absent parts, and a build with nothing new, as they are', () => {
    const absent: Build = {
      ...demo,
      parts: demo.parts.map((part) => (part.id === 'mirrors' ? { ...part, absent: true } : part)),
    };
    const build = widened(absent, demo.finishes);
    expect(candidatesOf(build, 'mirrors')).toEqual(candidatesOf(demo, 'mirrors'));
    expect(build.parts.filter((part) => !isOpen(part))).toEqual(
      demo.parts.filter((part) => !isOpen(part)),
    );
    expect(widened(build, demo.finishes)).toBe(build);
    expect(widened(demo, [])).toBe(demo);
  });
});
