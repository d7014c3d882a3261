/**
 * Tables kept from one change to the next never change an answer. Oracle: the comparison worked out
 * afresh after every change, over seeded evenings at the bench.
 */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { type Build, isOpen, refOf } from '../../src/build/build.ts';
import { addAlternative, removeAlternative } from '../../src/build/edit/alternative.ts';
import { openPart, setAbsent, settlePart, wearOn } from '../../src/build/edit/part.ts';
import { parseBuild } from '../../src/build/file.ts';
import type { SightTable } from '../../src/car/table.ts';
import { drawFrom } from '../../src/ground/draw.ts';
import { type Judged, judgeAgain } from '../../src/score/judged.ts';
import { compareAlternatives, comparisonOf } from '../../src/score/sheet.ts';

const read = (path: string): string => readFileSync(new URL(path, import.meta.url), 'utf8');
const demo = parseBuild(read('../../src/build/demo.json'));
const sight = JSON.parse(read('../../models/roadster.sight.json')) as SightTable;
const today = '2031-05-01';
const steps = 60;

describe('scores kept from change to change', () => {
  for (const seed of [3, 11, 42]) {
    it(`equal those worked out afresh over ${steps} changes, seed ${seed}`, () => {
      const draw = drawFrom(seed);
      const anyOf = <T>(list: readonly T[]): T => list[Math.floor(draw.uniform() * list.length)]!;
      const changes: ((build: Build) => Build)[] = [
        ...Array.from({ length: 6 }, () => (build: Build) => {
          const part = anyOf(build.parts);
          const ref = isOpen(part) ? anyOf(part.candidates) : refOf(anyOf(build.finishes));
          return wearOn(build, anyOf(build.alternatives).id, part.id, ref);
        }),
        (build) => settlePart(build, anyOf(build.parts).id, draw.uniform() < 0.5),
        (build) => openPart(build, anyOf(build.parts).id),
        (build) => setAbsent(build, anyOf(build.parts).id, draw.uniform() < 0.5),
        (build) => addAlternative(build, 'Another', anyOf(build.alternatives).id),
        (build) =>
          build.alternatives.length < 2
            ? build
            : removeAlternative(build, anyOf(build.alternatives).id),
        (build) => ({ ...build, viewing: { ...build.viewing, light: anyOf(['D65', 'A']) } }),
        (build) => ({ ...build, weights: { ...build.weights, contrast: 1 + draw.uniform() } }),
        (build) => ({ ...build, tonal: draw.uniform() < 0.5 }),
      ];
      let build = demo;
      let judged: Judged | undefined;
      let kept = 0;
      for (let step = 0; step < steps; step++) {
        build = anyOf(changes)(build);
        const before = judged;
        judged = judgeAgain(before, build, sight, { today });
        if (before?.terms === judged.terms) kept++;
        const judging = { today, withoutCloseness: true };
        expect(comparisonOf(judged, judging)).toEqual(compareAlternatives(build, sight, judging));
      }
      // The shortcut is taken, and not always.
      expect(kept).toBeGreaterThan(5);
      expect(kept).toBeLessThan(steps - 5);
    });
  }
});
