/**
 * A build as a cost network, against the sheet's own terms and rules for every combination (oracle),
 * over seeded builds with rules of all eight kinds.
 */
import { describe, expect, it } from 'vitest';
import { drawFrom } from '../../src/ground/draw.ts';
import { InputError } from '../../src/ground/problem.ts';
import { costOf, never } from '../../src/ranking/network.ts';
import { problemOf, type RankingProblem } from '../../src/ranking/problem/problem.ts';
import { judge } from '../../src/score/judged.ts';
import { scoreOfCost } from '../../src/score/terms.ts';
import { drawnBuild, everyCombination, sight, today } from './rank-builds.ts';

/** The problem of a seeded build, or nothing where its rules leave no combination. */
function drawnProblem(seed: number, size: { open: number; candidates: number }) {
  const build = drawnBuild(drawFrom(seed), size);
  const judged = judge(build, sight, { today });
  try {
    return { judged, problem: problemOf(build, sight, judged.from.judging, judged) };
  } catch (error) {
    if (error instanceof InputError) return { judged, problem: undefined };
    throw error;
  }
}

/** Every assignment of a problem's variables. */
function* assignmentsOf({ network: { sizes } }: RankingProblem): Generator<Int32Array> {
  const values = new Int32Array(sizes.length);
  for (;;) {
    yield values;
    let i = sizes.length - 1;
    while (i >= 0 && ++values[i]! === sizes[i]) values[i--] = 0;
    if (i < 0) return;
  }
}

const builds = 220;

describe('a build as a cost network', () => {
  it(`costs what the sheet says, and forbids what rules forbid: ${builds} builds, seeds from 1`, () => {
    let compared = 0;
    let forbidden = 0;
    const kinds = new Set<string>();
    for (let seed = 1; seed <= builds; seed++) {
      const { judged, problem } = drawnProblem(seed, { open: 5, candidates: 4 });
      const kept = new Map(
        everyCombination(judged).map((one) => [Object.values(one.choices).join(), one]),
      );
      const isAnyKept = [...kept.values()].some(({ keepsRules }) => keepsRules);
      if (problem === undefined) {
        expect(isAnyKept, `seed ${seed}`).toBe(false);
        continue;
      }
      const left = new Set<string>();
      for (const values of assignmentsOf(problem)) {
        const key = Object.values(problem.choicesOf(values)).join();
        const combination = kept.get(key)!;
        const cost = costOf(problem.network, values);
        expect(cost < never, `seed ${seed}: ${key}`).toBe(combination.keepsRules);
        if (cost >= never) {
          forbidden++;
          continue;
        }
        left.add(key);
        compared++;
        expect(
          Math.abs(scoreOfCost(cost) - combination.overall),
          `seed ${seed}: ${key}`,
        ).toBeLessThan(0.001);
      }
      // Nothing that keeps the rules has been left out.
      for (const [key, { keepsRules }] of kept) {
        if (keepsRules) expect(left.has(key), `seed ${seed}: ${key}`).toBe(true);
      }
      for (const { kind } of judged.build.rules) kinds.add(kind);
    }
    expect(kinds.size).toBe(8);
    expect(compared).toBeGreaterThan(2000);
    expect(forbidden).toBeGreaterThan(500);
  });

  it('never says a part-made assignment must cost more than a way to complete it, seeds from 1001', () => {
    let tried = 0;
    let telling = 0;
    for (let seed = 1001; seed <= 1200; seed++) {
      const { problem } = drawnProblem(seed, { open: 6, candidates: 4 });
      const rest = problem?.network.rest;
      if (problem === undefined || rest === undefined) continue;
      const draw = drawFrom(seed);
      const { sizes } = problem.network;
      for (let again = 0; again < 12; again++) {
        const part = Int32Array.from(sizes, (size) =>
          draw.uniform() < 0.5 ? -1 : draw.below(size),
        );
        const bound = rest.bound(part);
        let least = Number.POSITIVE_INFINITY;
        for (let k = 0; k < 40; k++) {
          const whole = part.map((value, i) => (value < 0 ? draw.below(sizes[i]!) : value));
          least = Math.min(least, rest.cost(whole));
        }
        expect(bound, `seed ${seed}: ${part.join()}`).toBeLessThanOrEqual(least + 1e-9);
        tried++;
        if (bound > 0.5 * least) telling++;
      }
    }
    expect(tried).toBeGreaterThan(1500);
    // Not so low that it tells nothing.
    expect(telling / tried).toBeGreaterThan(0.3);
  });
});
