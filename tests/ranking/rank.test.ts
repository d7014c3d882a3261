/**
 * Rankings against plain enumeration through the sheet (oracle): every combination scored by the
 * sheet's terms, every rule asked, sorted. And what is told where there is nothing to rank.
 */
import { describe, expect, it } from 'vitest';
import { bottlesToBuy } from '../../src/build/bottles.ts';
import { assignmentOf, type Build, isOpen, type Part, refOf } from '../../src/build/build.ts';
import { drawFrom } from '../../src/ground/draw.ts';
import { InputError } from '../../src/ground/problem.ts';
import { rankBuild } from '../../src/ranking/rank.ts';
import type { Ranking } from '../../src/ranking/ranking.ts';
import { type Judged, judge } from '../../src/score/judged.ts';
import { comparisonOf } from '../../src/score/sheet.ts';
import {
  type Combination,
  demo,
  drawnBuild,
  everyCombination,
  sight,
  stocked,
  today,
} from './rank-builds.ts';

const wanted = { today, count: 20, isDifferent: false };

/** Combinations that keep the rules, best first; the order of candidates where level. */
const bestFirst = (judged: Judged): Combination[] =>
  everyCombination(judged)
    .filter(({ keepsRules }) => keepsRules)
    .sort((one, other) => other.overall - one.overall);

const keyOf = (choices: Readonly<Record<string, string>>): string =>
  Object.entries(choices).sort().join();

function expectSame(ranking: Ranking, oracle: readonly Combination[], seed: number): void {
  const all = new Map(oracle.map((one) => [keyOf(one.choices), one]));
  expect(ranking.isProved).toBe(true);
  expect(ranking.rows, `seed ${seed}`).toHaveLength(Math.min(20, oracle.length));
  ranking.rows.forEach(({ sheet, choices, toBuy }, k) => {
    const place = `seed ${seed}, row ${k + 1}`;
    // The row is a combination that keeps the rules, and its number is that of the sheet.
    expect(sheet.overall, place).toBe(all.get(keyOf(choices))?.overall);
    expect(sheet.broken, place).toEqual([]);
    expect(Math.abs(sheet.overall - oracle[k]!.overall), place).toBeLessThan(0.001);
    expect(sheet.letter).toBe(String(k + 1));
    expect(toBuy.every(({ bottle }) => !bottle.onHand)).toBe(true);
    const isAlone = [k - 1, k + 1].every(
      (at) => Math.abs((oracle[at]?.overall ?? -1) - oracle[k]!.overall) > 0.001,
    );
    if (isAlone) expect(keyOf(choices), place).toBe(keyOf(oracle[k]!.choices));
  });
  expect(Math.abs(ranking.atMost - oracle[0]!.overall)).toBeLessThan(0.001);
}

describe('the best twenty', () => {
  const builds = 220;
  it(`are those of plain enumeration, rules and globals included: ${builds} builds, seeds from 1`, () => {
    let ranked = 0;
    let none = 0;
    for (let seed = 1; seed <= builds; seed++) {
      const build = drawnBuild(drawFrom(seed), { open: 5, candidates: 4 });
      const judged = judge(build, sight, { today });
      const oracle = bestFirst(judged);
      if (oracle.length === 0) {
        expect(() => rankBuild(build, sight, wanted, {}, judged), `seed ${seed}`).toThrow(
          InputError,
        );
        none++;
        continue;
      }
      expectSame(rankBuild(build, sight, wanted, {}, judged), oracle, seed);
      ranked++;
    }
    expect(ranked).toBeGreaterThan(builds * 0.6);
    expect(none).toBeGreaterThan(5);
  });

  it('of the demo are those of enumeration, best first', () => {
    const oracle = bestFirst(judge(demo, sight, { today }));
    const ranking = rankBuild(demo, sight, wanted);
    expectSame(ranking, oracle, 0);
    // derived: 3 choices each on 7 open parts, tied ones counted apart.
    expect(ranking.combinations).toBe(3n ** 7n);
    expect(ranking.open.map(({ id }) => id)).toEqual(demo.parts.filter(isOpen).map(({ id }) => id));
  });
});

describe('a row', () => {
  it('has the sheet of an alternative with its choices, evidence and all', () => {
    const judged = judge(demo, sight, { today });
    const { rows } = rankBuild(demo, sight, wanted, {}, judged);
    const alternatives = rows.map(({ sheet: { id, name }, choices }) => ({ id, name, choices }));
    const build = { ...judged.build, alternatives };
    const comparison = comparisonOf({ ...judged, build }, { today, withoutCloseness: true });
    const sheets = comparison.alternatives.map((sheet, k) => ({ ...sheet, letter: String(k + 1) }));
    expect(rows.map(({ sheet }) => sheet)).toEqual(sheets);
    expect(sheets[0]!.evidence.length).toBeGreaterThan(3);
    rows.forEach(({ toBuy, choices }, k) => {
      const assignment = assignmentOf(demo, { id: 'row', name: 'row', choices });
      expect(toBuy, `row ${k + 1}`).toEqual(bottlesToBuy(demo, assignment));
    });
  });
});

describe('a ranking that is stopped', () => {
  it('says that nothing is proved, and by how much the best could still be beaten', () => {
    const oracle = bestFirst(judge(demo, sight, { today }));
    const ranking = rankBuild(demo, sight, wanted, { isOver: () => true });
    expect(ranking.isProved).toBe(false);
    expect(ranking.atMost).toBeGreaterThanOrEqual(oracle[0]!.overall - 0.001);
    for (const { sheet } of ranking.rows) expect(sheet.broken).toEqual([]);
  });

  it('is told of rows on the way, each time at least as good', () => {
    const tops: number[] = [];
    rankBuild(demo, sight, wanted, { tell: ({ rows }) => tops.push(rows[0]?.sheet.overall ?? 0) });
    expect(tops.length).toBeGreaterThan(0);
    for (let k = 1; k < tops.length; k++) expect(tops[k]!).toBeGreaterThanOrEqual(tops[k - 1]!);
  });
});

/** What is said where a build cannot be ranked. */
function refusal(build: Build, asked = wanted): string {
  try {
    rankBuild(build, sight, asked);
  } catch (error) {
    if (error instanceof InputError) return error.message;
    throw error;
  }
  return 'ranked';
}

const opened = (build: Build, ids: readonly string[], candidates: readonly string[]): Build => ({
  ...build,
  parts: build.parts.map(
    ({ id, name, covers, absent, ...rest }): Part =>
      ids.includes(id)
        ? { id, name, covers, absent, candidates: [...candidates] }
        : ({ id, name, covers, absent, ...rest } as Part),
  ),
});

describe('what cannot be ranked', () => {
  it('says so where no part is open', () => {
    const settled = demo.parts.map(
      (part): Part =>
        isOpen(part)
          ? {
              id: part.id,
              name: part.name,
              covers: part.covers,
              absent: false,
              finish: part.candidates[0]!,
              painted: false,
            }
          : part,
    );
    expect(refusal({ ...demo, parts: settled })).toMatch(/^parts: found no open part/);
  });

  it('names a weight that is no number, and weights that are all 0', () => {
    const { weights } = demo;
    expect(refusal({ ...demo, weights: { ...weights, sheen: Number.NaN } })).toMatch(
      /^weights › sheen: found NaN/,
    );
    const nothing = { contrast: 0, accent: 0, sheen: 0, harmony: 0, steadiness: 0, readiness: 0 };
    expect(refusal({ ...demo, weights: nothing })).toMatch(/^weights: found all of them 0/);
  });

  it('names rules that cannot hold together', () => {
    // Mirrors may be dragonfly, marigold or oyster, dashboard dragonfly, black or marigold.
    const paint = (name: string) => `corner-shop/${name}`;
    const build: Build = {
      ...demo,
      rules: [
        { kind: 'most-new-bottles', count: 9 },
        { kind: 'same', parts: ['mirrors', 'dashboard'] },
        {
          kind: 'never-together',
          first: { part: 'mirrors', finish: paint('dragonfly') },
          second: { part: 'dashboard', finish: paint('dragonfly') },
        },
        {
          kind: 'never-together',
          first: { part: 'mirrors', finish: paint('marigold') },
          second: { part: 'dashboard', finish: paint('marigold') },
        },
      ],
    };
    expect(refusal(build)).toMatch(
      /^rules: found 3 rules that cannot hold together: rule 2 .*rule 3 .*rule 4 /,
    );
  });

  it('names the rule where colours leave nothing', () => {
    const build: Build = { ...demo, rules: [{ kind: 'most-share', part: 'body', percent: 1 }] };
    expect(refusal(build)).toMatch(/rule 1 \(The colour of .* may take at most 1 %/);
    const late: Build = { ...demo, rules: [{ kind: 'ready-by', date: '2031-04-01' }] };
    expect(refusal(late)).toMatch(/rule 1 \(Everything must be dry by 2031-04-01\)/);
  });

  it('ranks under a limit of no bottles what is on hand, or says that the limit cannot be kept', () => {
    const build: Build = { ...demo, rules: [{ kind: 'most-new-bottles', count: 0 }] };
    const oracle = bestFirst(judge(build, sight, { today }));
    if (oracle.length === 0) expect(refusal(build)).toMatch(/At most 0 bottles/);
    else expectSame(rankBuild(build, sight, wanted), oracle, 0);
  });

  it('asks for rows that can be had', () => {
    for (const count of [0, 1.5, Number.NaN, 1001]) {
      expect(refusal(demo, { ...wanted, count })).toMatch(/^rows wanted: found/);
    }
  });

  it('refuses forty parts of five hundred candidates before anything large is laid out', () => {
    // Forty parts, each covering one part of the car, all open to 500 finishes.
    const ids = sight.parts.slice(0, 40).map(({ id }) => id);
    const [first] = stocked.finishes;
    const finishes = Array.from({ length: 500 }, (_, k) => ({ ...first!, id: `paint-${k}` }));
    const parts = ids.map(
      (id): Part => ({
        id,
        name: id,
        covers: [id],
        absent: false,
        candidates: finishes.map(refOf),
      }),
    );
    const build: Build = { ...demo, finishes, parts, rules: [], alternatives: [] };
    expect(refusal(build)).toMatch(/^candidates: found 40 choices with up to 500 finishes each/);
    const many = Array.from({ length: 1200 }, (_, k) => ({ ...first!, id: `paint-${k}` }));
    const crowded = opened(
      { ...demo, finishes: [...demo.finishes, ...many] },
      ['mirrors'],
      many.map(refOf),
    );
    expect(refusal(crowded)).toMatch(/^candidates: found 1,2\d\d different finishes/);
  });
});
