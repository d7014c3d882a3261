/**
 * Contradictions and counts against plain enumeration (oracle: every combination tried, each rule
 * judged by its own words, no narrowing) on 300 seeded small builds.
 */
import { describe, expect, it } from 'vitest';
import type { Rule } from '../../src/build/build.ts';
import { combinationCount } from '../../src/build/choice/combination.ts';
import { contradictions } from '../../src/build/choice/contradiction.ts';
import { drawFrom } from '../../src/ground/draw.ts';
import { countKeeping, everyCombination, keeps } from './enumerated.ts';
import { randomBuild, ref, sketched } from './sample.ts';

const seed = 20310524;
const draw = drawFrom(seed);
const builds = Array.from({ length: 300 }, () => randomBuild(draw));

describe(`300 small builds from seed ${seed}, against trying every combination`, () => {
  it('hold both kinds often enough to mean something', () => {
    const stuck = builds.filter((build) => countKeeping(build, build.rules) === 0).length;
    expect(stuck).toBeGreaterThan(50);
    expect(stuck).toBeLessThan(250);
  });

  it('are told contradictory exactly where no combination keeps the rules', () => {
    for (const build of builds) {
      const kind = countKeeping(build, build.rules) === 0 ? 'cannot-hold' : 'can-hold';
      expect(contradictions(build).kind, JSON.stringify(build.rules)).toBe(kind);
    }
  });

  it('come with an example that keeps every rule', () => {
    for (const build of builds) {
      const verdict = contradictions(build);
      if (verdict.kind !== 'can-hold') continue;
      const worn = Object.fromEntries(verdict.example);
      expect(build.rules.every((rule) => keeps(build, worn, rule))).toBe(true);
    }
  });

  it('name rules that really clash, none of which could be spared', () => {
    for (const build of builds) {
      const verdict = contradictions(build);
      if (verdict.kind !== 'cannot-hold') continue;
      const { rules, isSmallest } = verdict.contradiction;
      const named = rules.map((index) => build.rules[index]!);
      expect(isSmallest).toBe(true);
      expect(countKeeping(build, named)).toBe(0);
      for (const spared of named) {
        expect(
          countKeeping(
            build,
            named.filter((rule) => rule !== spared),
          ),
        ).toBeGreaterThan(0);
      }
    }
  });

  it('are counted exactly, with and without their rules', () => {
    for (const build of builds) {
      expect(combinationCount(build)).toEqual({
        all: BigInt(everyCombination(build).length),
        keepingRules: BigInt(countKeeping(build, build.rules)),
      });
    }
  });
});

describe('a contradiction', () => {
  const clash = sketched({
    finishes: ['red', 'teal', 'sand'],
    parts: { body: 'red', stripes: ['teal', 'sand'], mirrors: ['red', 'teal'], seats: ['sand'] },
    rules: [
      { kind: 'most-finishes', count: 9 },
      { kind: 'same', parts: ['stripes', 'mirrors'] },
      {
        kind: 'never-together',
        first: { part: 'body', finish: ref('red') },
        second: { part: 'stripes', finish: ref('teal') },
      },
    ],
  });

  it('is told in the builder’s words with the rules by number', () => {
    const verdict = contradictions(clash);
    if (verdict.kind !== 'cannot-hold') throw new Error(verdict.kind);
    // Derived: the same finish on both can only be teal, which red forbids; nine finishes fit.
    expect(verdict.contradiction.rules).toEqual([1, 2]);
    expect(verdict.contradiction.sentence).toBe(
      'With these candidates 2 rules cannot hold together: rule 2 (Stripes must wear the same as Mirrors) and rule 3 (Body in Red must not meet Stripes in Teal).',
    );
  });

  it('may be one rule alone', () => {
    const verdict = contradictions(
      sketched({
        parts: { body: 'red', stripes: ['teal'] },
        rules: [{ kind: 'same', parts: ['body', 'stripes'] }],
      }),
    );
    expect(verdict).toMatchObject({ kind: 'cannot-hold', contradiction: { rules: [0] } });
  });

  it('is never claimed when the effort allowed does not settle it', () => {
    expect(contradictions(clash, { left: 0 }).kind).toBe('not-settled');
    expect(combinationCount(clash, { left: 1 }).keepingRules).toBeUndefined();
  });
});

describe('a contradiction found with no effort left to narrow it down', () => {
  it('says that fewer rules may clash', () => {
    const rules: Rule[] = [
      { kind: 'most-finishes', count: 9 },
      { kind: 'same', parts: ['body', 'stripes'] },
    ];
    const build = sketched({ parts: { body: 'red', stripes: ['teal'] }, rules });
    expect(contradictions(build, { left: 1 })).toMatchObject({
      kind: 'cannot-hold',
      contradiction: { rules: [0, 1], isSmallest: false },
    });
  });
});

describe('many parts', () => {
  const ids = Array.from({ length: 60 }, (_, k) => `part-${k}`);
  const shades = Array.from({ length: 20 }, (_, k) => `shade-${k}`);
  const parts = Object.fromEntries(ids.map((id) => [id, shades]));

  it('are multiplied out exactly, beyond what a plain number holds', () => {
    const build = sketched({ parts, rules: [{ kind: 'same', parts: ids.slice(0, 2) }] });
    // Derived: 60 free parts give 20⁶⁰; tying two leaves 59 free choices.
    expect(combinationCount(build)).toEqual({ all: 20n ** 60n, keepingRules: 20n ** 59n });
  });

  it('that cannot differ as asked give a bounded answer instead of hanging', () => {
    // Derived: 20 shades cannot differ over 21 parts (pigeonhole), which pairwise thinking
    // cannot see and search cannot finish.
    const pairs = ids.slice(0, 21).flatMap((a, k) => ids.slice(k + 1, 21).map((b) => [a, b]));
    const rules: Rule[] = pairs.flatMap(([a, b]) =>
      shades.map(
        (shade): Rule => ({
          kind: 'never-together',
          first: { part: a!, finish: ref(shade) },
          second: { part: b!, finish: ref(shade) },
        }),
      ),
    );
    const build = { ...sketched({ parts }), rules };
    const effort = { left: 2_000_000 };
    expect(contradictions(build, effort).kind).toBe('not-settled');
    expect(effort.left).toBeGreaterThan(-100_000);
  });
});
