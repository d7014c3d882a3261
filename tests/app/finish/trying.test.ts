/**
 * A finish tried on the car for a look: do the cars wear it there, and only there, while the build
 * stays as it is? Expected from the demo itself: what every other part wears is what it wore before.
 */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { shownBuild } from '../../../src/app/finish/trying.ts';
import { assignmentOf, finishesByRef, refOf } from '../../../src/build/build.ts';
import { parseBuild } from '../../../src/build/file.ts';
import { finishWith } from '../../finish/sample.ts';

const demo = parseBuild(
  readFileSync(new URL('../../../src/build/demo.json', import.meta.url), 'utf8'),
);
const finish = { rack: 'shelf', ...finishWith({ id: 'quarry', name: 'Quarry' }) };

describe('what is tried', () => {
  it('is nothing while nothing is tried', () => {
    expect(shownBuild(demo, undefined)).toBe(demo);
  });

  for (const part of demo.parts) {
    it(`on ${part.name} is worn there on every car, and nothing else changes`, () => {
      const before = structuredClone(demo);
      const shown = shownBuild(demo, { part: part.id, finish });
      expect(finishesByRef(shown).get('shelf/quarry')).toBe(finish);
      shown.alternatives.forEach((alternative, at) => {
        const worn = assignmentOf(shown, alternative);
        const was = assignmentOf(demo, demo.alternatives[at]!);
        for (const { id } of demo.parts) {
          expect(worn.get(id)).toBe(id === part.id ? refOf(finish) : was.get(id));
        }
      });
      expect(demo).toEqual(before);
    });
  }
});
