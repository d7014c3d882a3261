/** The demo build opens clean and asks the question it was written for. */
import { readFileSync } from 'node:fs';
import * as v from 'valibot';
import { describe, expect, it } from 'vitest';
import { bottlesToBuy } from '../../src/build/bottles.ts';
import { assignmentOf, isOpen } from '../../src/build/build.ts';
import { combinationCount } from '../../src/build/choice/combination.ts';
import { contradictions } from '../../src/build/choice/contradiction.ts';
import { checkAgainstCar, uncoveredParts } from '../../src/build/coverage.ts';
import { parseBuild, textOf } from '../../src/build/file.ts';
import { brokenRules } from '../../src/build/rule.ts';
import { sightTableSchema } from '../../src/car/table.ts';

const at = (path: string): string =>
  readFileSync(new URL(`../../${path}`, import.meta.url), 'utf8');
const text = at('src/build/demo.json');
const demo = parseBuild(text, 'demo.json');
const open = demo.parts.filter(isOpen);

describe('the demo', () => {
  it('is written as the program itself would write it', () => {
    expect(textOf(demo)).toBe(text);
  });

  it('is half painted, with at least four parts open to two to four finishes each', () => {
    expect(open.length).toBeGreaterThanOrEqual(4);
    for (const { candidates } of open) {
      expect(candidates.length).toBeGreaterThanOrEqual(2);
      expect(candidates.length).toBeLessThanOrEqual(4);
    }
    expect(demo.parts.some((part) => !isOpen(part) && part.painted)).toBe(true);
  });

  it('leaves belts and calipers out of the question', () => {
    const asked = open.flatMap(({ covers }) => covers);
    expect(asked).not.toContain('belts');
    expect(asked).not.toContain('calipers');
  });

  it('has three alternatives that keep every rule that choices alone decide', () => {
    expect(demo.alternatives).toHaveLength(3);
    const facts = {
      echoesElsewhere: () => true,
      sharePercent: () => 0,
      readyDate: () => '2031-05-24',
    };
    for (const alternative of demo.alternatives) {
      expect(brokenRules(demo, assignmentOf(demo, alternative), facts)).toEqual([]);
    }
  });

  it('has rules that rule something out, and not everything', () => {
    expect(contradictions(demo).kind).toBe('can-hold');
    const { all, keepingRules } = combinationCount(demo);
    expect(keepingRules).toBeLessThan(all);
    expect(keepingRules).toBeGreaterThan(0n);
  });

  it('asks for a purchase somewhere', () => {
    const bought = demo.alternatives.map(
      (alternative) => bottlesToBuy(demo, assignmentOf(demo, alternative)).length,
    );
    expect(Math.max(...bought)).toBeGreaterThan(0);
  });

  it('uses every finish it embeds', () => {
    const worn = demo.parts.flatMap((part) => (isOpen(part) ? part.candidates : [part.finish]));
    expect(new Set(worn)).toEqual(new Set(demo.finishes.map(({ rack, id }) => `${rack}/${id}`)));
  });

  it('covers its car completely', () => {
    const sight = v.parse(sightTableSchema, JSON.parse(at('models/roadster.sight.json')));
    expect(checkAgainstCar(demo, sight)).toEqual([]);
    expect(uncoveredParts(demo, sight)).toEqual([]);
  });
});
