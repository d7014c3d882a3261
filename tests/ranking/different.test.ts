/**
 * Rows that plainly differ, against picking them from the whole sorted list (oracle): CIEDE2000 by
 * culori, as worn in the build's light.
 */
import { differenceCiede2000 } from 'culori';
import { describe, expect, it } from 'vitest';
import { type Build, isOpen } from '../../src/build/build.ts';
import { drawFrom } from '../../src/ground/draw.ts';
import { InputError } from '../../src/ground/problem.ts';
import { rankBuild } from '../../src/ranking/rank.ts';
import type { Ranking } from '../../src/ranking/ranking.ts';
import { type Judged, judge } from '../../src/score/judged.ts';
import { demo, drawnBuild, everyCombination, sight, today } from './rank-builds.ts';

const difference = differenceCiede2000();
type Choices = Readonly<Record<string, string>>;

/** Whether two combinations differ by 5 or more in an open part that shows. */
function differIn({ terms }: Judged): (one: Choices, other: Choices) => boolean {
  const labs = new Map(
    terms.candidates.flatMap((list) => list.map(({ worn }) => [worn.ref, worn.lab] as const)),
  );
  const colour = (ref: string) => {
    const [l, a, b] = labs.get(ref)!;
    return { mode: 'lab65' as const, l, a, b };
  };
  return (one, other) =>
    Object.keys(one).some(
      (part) =>
        terms.scene.positions.has(part) &&
        difference(colour(one[part]!), colour(other[part]!)) >= 5,
    );
}

/** The build with every candidate twice: once as it is, once as matt as it gets. */
function withTwins(build: Build): Build {
  const twins = build.finishes.map((finish) => ({
    ...finish,
    id: `${finish.id}-matt`,
    gloss60: 4,
  }));
  const parts = build.parts.map((part) =>
    isOpen(part)
      ? { ...part, candidates: part.candidates.flatMap((ref) => [ref, `${ref}-matt`]) }
      : part,
  );
  return { ...build, finishes: [...build.finishes, ...twins], parts };
}

/** Rows differ from those above, and none that does is better than what stands next. */
function expectBest(ranking: Ranking, judged: Judged, count: number, title: string): void {
  const differ = differIn(judged);
  const all = everyCombination(judged).filter(({ keepsRules }) => keepsRules);
  const rows = ranking.rows.map(({ choices, sheet }) => ({ choices, overall: sheet.overall }));
  expect(ranking.isProved, title).toBe(true);
  for (let k = 0; k <= rows.length && k < count; k++) {
    const above = rows.slice(0, k);
    const eligible = all.filter(({ choices }) =>
      above.every((row) => differ(choices, row.choices)),
    );
    const best = Math.max(...eligible.map(({ overall }) => overall));
    if (k === rows.length) expect(eligible, `${title}, after row ${k}`).toEqual([]);
    else {
      expect(Math.abs(rows[k]!.overall - best), `${title}, row ${k + 1}`).toBeLessThan(0.001);
      expect(above.every((row) => differ(rows[k]!.choices, row.choices))).toBe(true);
    }
  }
}

describe('rows that plainly differ', () => {
  const builds = 100;
  const count = 8;
  it(`are those that picking from the sorted list gives: ${builds} builds, seeds from 301`, () => {
    let ranked = 0;
    let shorter = 0;
    let withLookalikes = 0;
    for (let seed = 301; seed < 301 + builds; seed++) {
      const build = withTwins(drawnBuild(drawFrom(seed), { open: 4, candidates: 3 }));
      const judged = judge(build, sight, { today });
      const asked = { today, count, isDifferent: true };
      try {
        const ranking = rankBuild(build, sight, asked, {}, judged);
        expectBest(ranking, judged, count, `seed ${seed}`);
        ranked++;
        if (ranking.rows.length < count) shorter++;
        const differ = differIn(judged);
        const { rows } = rankBuild(build, sight, { ...asked, isDifferent: false }, {}, judged);
        const isAlike = rows.some(({ choices }, k) =>
          rows.slice(0, k).some((above) => !differ(choices, above.choices)),
        );
        if (isAlike) withLookalikes++;
      } catch (error) {
        if (!(error instanceof InputError)) throw error;
      }
    }
    expect(ranked).toBeGreaterThan(builds * 0.6);
    expect(shorter).toBeGreaterThan(5);
    // Without being asked for, the best rows often hold some that look alike.
    expect(withLookalikes).toBeGreaterThan(50);
  });

  it('of the demo are those that picking gives', () => {
    const judged = judge(demo, sight, { today });
    const asked = { today, count: 20, isDifferent: true };
    expectBest(rankBuild(demo, sight, asked), judged, 20, 'demo');
  });
});
