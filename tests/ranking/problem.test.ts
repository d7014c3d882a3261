/**
 * A build as a cost network, against the sheet's own terms and rules for every combination (oracle),
 * over seeded builds with rules of all eight kinds.
 */
import { describe, expect, it } from 'vitest';
import { type Build, type Part, refOf } from '../../src/build/build.ts';
import { bottlesOf } from '../../src/finish/finish.ts';
import { type Draw, drawFrom } from '../../src/ground/draw.ts';
import { InputError } from '../../src/ground/problem.ts';
import { costOf, never, type Rest } from '../../src/ranking/network.ts';
import { problemOf, type RankingProblem } from '../../src/ranking/problem/problem.ts';
import { type Judged, judge } from '../../src/score/judged.ts';
import { overallOf, scoreOfCost } from '../../src/score/terms.ts';
import { drawnBuild, everyCombination, sight, stocked, today } from './rank-builds.ts';

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

/** Two finishes of the racks that take bottles not on hand. */
const refsToBuy = (): string[] =>
  stocked.finishes
    .filter((finish) => bottlesOf(finish).some(({ onHand }) => !onHand))
    .map(refOf)
    .slice(0, 2);

const builds = 220;

/** Holds every assignment of a problem against the sheet; how many it allows and forbids. */
function expectSheets(judged: Judged, problem: RankingProblem, title: string) {
  const kept = new Map(
    everyCombination(judged).map((one) => [Object.values(one.choices).join(), one]),
  );
  const left = new Set<string>();
  let forbidden = 0;
  for (const values of assignmentsOf(problem)) {
    const key = Object.values(problem.choicesOf(values)).join();
    const { overall, keepsRules } = kept.get(key)!;
    const cost = costOf(problem.network, values);
    const place = `${title}: ${key}`;
    expect(cost < never, place).toBe(keepsRules);
    if (!keepsRules) forbidden++;
    else {
      left.add(key);
      expect(Math.abs(scoreOfCost(cost) - overall), place).toBeLessThan(0.001);
    }
  }
  // Nothing that keeps the rules has been left out.
  for (const [key, { keepsRules }] of kept) {
    if (keepsRules) expect(left.has(key), `${title}: ${key}`).toBe(true);
  }
  return { allowed: left.size, forbidden };
}

/**
 * The least rest found among completions of an assignment: from drawn ones, one open value after the
 * other moved to where it costs least, twice over.
 */
function leastFound(
  rest: Rest,
  part: Int32Array,
  sizes: readonly number[],
  draw: Draw,
  beginnings: number,
): number {
  let least = Number.POSITIVE_INFINITY;
  for (let k = 0; k < beginnings; k++) {
    const whole = part.map((value, i) => (value < 0 ? draw.below(sizes[i]!) : value));
    for (const i of [...part.keys(), ...part.keys()]) {
      if (part[i]! >= 0) continue;
      const costs = Array.from({ length: sizes[i]! }, (_, a) => {
        whole[i] = a;
        return rest.cost(whole);
      });
      whole[i] = costs.indexOf(Math.min(...costs));
      least = Math.min(least, ...costs);
    }
    least = Math.min(least, rest.cost(whole));
  }
  return least;
}

describe('a build as a cost network', () => {
  it(`costs what the sheet says, and forbids what rules forbid: ${builds} builds, seeds from 1`, () => {
    let compared = 0;
    let forbidden = 0;
    const kinds = new Set<string>();
    for (let seed = 1; seed <= builds; seed++) {
      const { judged, problem } = drawnProblem(seed, { open: 5, candidates: 4 });
      if (problem === undefined) {
        const isAnyKept = everyCombination(judged).some(({ keepsRules }) => keepsRules);
        expect(isAnyKept, `seed ${seed}`).toBe(false);
        continue;
      }
      const found = expectSheets(judged, problem, `seed ${seed}`);
      compared += found.allowed;
      forbidden += found.forbidden;
      for (const { kind } of judged.build.rules) kinds.add(kind);
    }
    expect(kinds.size).toBe(8);
    expect(compared).toBeGreaterThan(2000);
    expect(forbidden).toBeGreaterThan(500);
  });

  it('counts bottles of a part that goes with one that is not on the model, though it never shows', () => {
    // Without mirrors there are no stalks to be seen; what they wear must still be bought.
    const [first, second] = refsToBuy();
    const parts = stocked.parts.map(
      (part): Part => (part.id === 'mirrors' ? { ...part, absent: true } : part),
    );
    const trim = parts.find(({ id }) => id === 'sills-and-trim')!;
    const build: Build = {
      ...stocked,
      parts: [
        ...parts.filter((part) => part !== trim),
        { ...trim, covers: trim.covers.filter((id) => id !== 'mirror-stalks') },
        {
          id: 'stalks',
          name: 'Stalks',
          covers: ['mirror-stalks'],
          absent: false,
          candidates: ['bench-drawer/stove-black', first!, second!],
        },
      ],
      alternatives: [],
      rules: [{ kind: 'most-new-bottles', count: 2 }],
    };
    const judged = judge(build, sight, { today });
    expect(judged.terms.scene.positions.has('stalks')).toBe(false);
    const problem = problemOf(build, sight, { today }, judged);
    const { allowed, forbidden } = expectSheets(judged, problem, 'stalks');
    expect(allowed).toBeGreaterThan(0);
    expect(forbidden).toBeGreaterThan(0);
  });

  it('costs what the sheet says with nearly every part of the car open, seed 5', () => {
    const draw = drawFrom(5);
    const refs = stocked.finishes.map(refOf);
    const chosen = sight.parts.filter(({ given }) => given === undefined);
    const parts = chosen.map(({ id, name }): Part => {
      const candidates = [...new Set([0, 1, 2].map(() => refs[draw.below(refs.length)]!))];
      return { id, name, covers: [id], absent: false, candidates };
    });
    const build: Build = { ...stocked, parts, rules: [], alternatives: [], mustRead: [] };
    const judged = judge(build, sight, { today });
    const problem = problemOf(build, sight, { today }, judged);
    const costs = new Float64Array(6);
    for (let k = 0; k < 100; k++) {
      const values = Int32Array.from(problem.network.sizes, (size) => draw.below(size));
      const choice = judged.choiceOf(problem.assignmentOf(values));
      const overall = overallOf(judged.terms.costs(choice, costs), build.weights);
      const cost = costOf(problem.network, values);
      expect(Math.abs(scoreOfCost(cost) - overall)).toBeLessThan(0.001);
      const part = values.map((value) => (draw.uniform() < 0.5 ? -1 : value));
      const { rest } = problem.network;
      expect(rest!.bound(part)).toBeLessThanOrEqual(rest!.cost(values) + 1e-9);
    }
    expect(problem.network.sizes.length).toBeGreaterThan(33);
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
        const least = leastFound(rest, part, sizes, draw, 12);
        expect(bound, `seed ${seed}: ${part.join()}`).toBeLessThanOrEqual(least + 1e-9);
        tried++;
        if (bound > 0.5 * least) telling++;
      }
    }
    expect(tried).toBeGreaterThan(1500);
    // Not so low that it tells nothing.
    expect(telling / tried).toBeGreaterThan(0.6);
  });

  it('nor where every part may wear anything of two racks, seeds from 1', () => {
    const parts = stocked.parts.map((part, at): Part => {
      const { id, name, covers } = part;
      if (at % 2 > 0) return part;
      return { id, name, covers, absent: false, candidates: stocked.finishes.map(refOf) };
    });
    let tried = 0;
    let telling = 0;
    for (const tonal of [false, true]) {
      const build: Build = { ...stocked, parts, tonal, rules: [], alternatives: [] };
      const { network } = problemOf(build, sight, { today });
      const rest = network.rest!;
      for (let seed = 1; seed <= 60; seed++) {
        const draw = drawFrom(seed);
        const part = Int32Array.from(network.sizes, (size) => draw.below(size));
        for (let open = 1 + draw.below(4); open > 0; open--) part[draw.below(part.length)] = -1;
        const bound = rest.bound(part);
        const least = leastFound(rest, part, network.sizes, draw, 2);
        expect(bound, `seed ${seed}: ${part.join()}`).toBeLessThanOrEqual(least + 1e-9);
        tried++;
        if (bound > 0.5 * least) telling++;
      }
    }
    expect(telling / tried).toBeGreaterThan(0.5);
  });
});
