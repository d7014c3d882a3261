/**
 * Why rules clash and what would free them, against plain enumeration (oracle: enumerated.ts tries
 * every combination) on 300 seeded small builds, each argument re-checked step by step.
 */
import { describe, expect, it } from 'vitest';
import { type Build, type Rule, refOf } from '../../src/build/build.ts';
import { toldArgument } from '../../src/build/choice/because.ts';
import { type Argument, argumentAgainst } from '../../src/build/choice/consequence.ts';
import { contradictions } from '../../src/build/choice/contradiction.ts';
import { idleWishes, neverApplies } from '../../src/build/choice/idle.ts';
import { remediesFor, withRemedy } from '../../src/build/choice/remedy.ts';
import { drawFrom } from '../../src/ground/draw.ts';
import { combinationsOf, countKeeping, everyCombination, keeps, wearable } from './enumerated.ts';
import { randomBuild, ref, sketched } from './sample.ts';

const seed = 20310607;
const draw = drawFrom(seed);
const stuck = Array.from({ length: 300 }, () => randomBuild(draw)).flatMap((build) => {
  const verdict = contradictions(build);
  return verdict.kind === 'cannot-hold' ? [{ build, rules: verdict.contradiction.rules }] : [];
});
const told = stuck.flatMap(({ build, rules }) => {
  const argument = argumentAgainst(build, rules);
  return argument === undefined ? [] : [{ build, rules, argument }];
});

type Domains = ReadonlyMap<string, readonly string[]>;

/** Fails unless every step follows from its one rule and what was left before it. */
function check(build: Build, argument: Argument, before: Domains): void {
  let now = before;
  argument.steps.forEach(({ rule, part, left }, k) => {
    const fits = combinationsOf(now).filter((worn) => keeps(build, worn, build.rules[rule]!));
    const isLast = k === argument.steps.length - 1;
    if (part === undefined) {
      expect(isLast).toBe(true);
      expect(fits).toEqual([]);
      return;
    }
    const lost = now.get(part)!.filter((one) => !left.includes(one));
    expect(lost.length).toBeGreaterThan(0);
    expect(fits.filter((worn) => lost.includes(worn[part]!))).toEqual([]);
    now = new Map(now).set(part, left);
  });
  const end = argument.steps.at(-1);
  if (argument.cases.length === 0) {
    expect(end?.left).toEqual([]);
    return;
  }
  const { part } = argument.cases[0]!;
  expect(argument.cases.map(({ finish }) => finish)).toEqual(now.get(part));
  for (const { finish, follows } of argument.cases) {
    check(build, follows, new Map(now).set(part, [finish]));
  }
}

describe(`arguments against clashing rules of builds from seed ${seed}`, () => {
  it('are given for nearly all of them', () => {
    expect(stuck.length).toBeGreaterThan(50);
    expect(told.length).toBeGreaterThan(0.9 * stuck.length);
    expect(told.some(({ argument }) => argument.cases.length > 0)).toBe(true);
  });

  it('take only steps that follow, and end with nothing left', () => {
    for (const { build, argument } of told) check(build, argument, wearable(build));
  });

  it('speak of the clashing rules only, and need each of them', () => {
    const rulesIn = ({ steps, cases }: Argument): number[] => [
      ...steps.map(({ rule }) => rule),
      ...cases.flatMap(({ follows }) => rulesIn(follows)),
    ];
    for (const { rules, argument } of told) {
      expect([...new Set(rulesIn(argument))].sort()).toEqual([...rules].sort());
    }
  });

  it('are not found where the rules can hold', () => {
    for (const { build, rules } of stuck) {
      // Dropping any one of an irreducible set frees the rest.
      expect(argumentAgainst(build, rules.slice(1))).toBeUndefined();
    }
  });
});

describe('ways out of a clash', () => {
  it('free exactly what enumeration counts', () => {
    for (const { build, rules } of stuck) {
      for (const { way, kind, leaves } of remediesFor(build, rules)) {
        const freed = withRemedy(build, way);
        const count = countKeeping(freed, freed.rules);
        expect(kind).toBe(count > 0 ? 'frees' : 'stuck');
        expect(leaves).toBe(count > 0 ? BigInt(count) : undefined);
      }
    }
  });

  it('offer every rule of the clash, and candidates wherever one would do', () => {
    for (const { build, rules } of stuck) {
      const remedies = remediesFor(build, rules);
      const out = remedies.flatMap(({ way }) => (way.kind === 'take-out' ? [way.rule] : []));
      expect(out).toEqual(rules);
      const helps = build.parts.some((part) =>
        build.finishes.some((finish) => {
          const way = { kind: 'add-candidate', part: part.id, finish: refOf(finish) } as const;
          const freed = withRemedy(build, way);
          return freed !== build && countKeeping(freed, freed.rules) > 0;
        }),
      );
      expect(remedies.some(({ way }) => way.kind === 'add-candidate')).toBe(helps);
    }
  });
});

describe('an argument in words', () => {
  const wears = (part: string, finish: string) => ({ part, finish: ref(finish) });
  const wordsFor = (parts: Record<string, string | string[]>, rules: Rule[], toBuy?: string[]) => {
    const build = sketched({ parts, rules, ...(toBuy && { toBuy }) });
    const verdict = contradictions(build);
    if (verdict.kind !== 'cannot-hold') throw new Error(verdict.kind);
    return toldArgument(build, argumentAgainst(build, verdict.contradiction.rules)!);
  };

  it('goes from what is certain to nothing left', () => {
    // Derived: alike leaves teal for both; teal on the stripes asks for sand seats, which are red.
    expect(
      wordsFor({ stripes: ['teal', 'sand'], mirrors: ['red', 'teal'], seats: ['red', 'slate'] }, [
        { kind: 'same', parts: ['stripes', 'mirrors'] },
        {
          kind: 'if-then',
          when: wears('stripes', 'teal'),
          wants: { part: 'seats', oneOf: [ref('sand')] },
        },
      ]),
    ).toEqual({
      steps: [
        'Stripes and Mirrors must wear the same (rule 1); left for them: Teal.',
        'Stripes can only wear Teal, so Seats must wear Sand (rule 2); nothing is left for Seats.',
      ],
      cases: [],
    });
  });

  it('counts what is certain against a limit', () => {
    // Derived: red and teal are settled and both to buy, where one bottle may be bought.
    expect(
      wordsFor(
        { body: 'red', stripes: ['teal'] },
        [{ kind: 'most-new-bottles', count: 1 }],
        ['red', 'teal'],
      ).steps,
    ).toEqual([
      '“red bottle” (for Body) and “teal bottle” (for Stripes) must be bought in any case, and rule 1 allows 1.',
    ]);
  });

  it('says what a limit leaves', () => {
    // Derived: red is settled and the one finish allowed, and the stripes cannot wear it.
    expect(
      wordsFor({ body: 'red', stripes: ['teal', 'sand'] }, [{ kind: 'most-finishes', count: 1 }])
        .steps,
    ).toEqual(['Red must be worn in any case, and rule 1 allows 1; nothing is left for Stripes.']);
  });

  it('supposes each finish in turn where nothing is certain', () => {
    // Derived: red asks for red seats and teal for teal ones, neither of which may meet the other.
    const wants = (on: string) => ({
      kind: 'if-then' as const,
      when: wears('stripes', on),
      wants: { part: 'seats', oneOf: [ref(on)] },
    });
    const never = (on: string) => ({
      kind: 'never-together' as const,
      first: wears('stripes', on),
      second: wears('seats', on),
    });
    const { steps, cases } = wordsFor({ stripes: ['red', 'teal'], seats: ['red', 'teal'] }, [
      wants('red'),
      wants('teal'),
      never('red'),
      never('teal'),
    ]);
    expect(steps).toEqual([]);
    expect(cases.map(({ suppose }) => suppose)).toEqual([
      'Suppose Stripes in Red:',
      'Suppose Stripes in Teal:',
    ]);
    expect(cases[0]!.follows.steps).toEqual([
      'Stripes can only wear Red, so Seats must wear Red (rule 1); left for Seats: Red.',
      'Stripes can only wear Red, so Seats cannot wear Red (rule 3); nothing is left for Seats.',
    ]);
  });
});

describe('a rule that can never apply', () => {
  it('is one whose occasion no combination shows', () => {
    const seen = new Set<boolean>();
    for (const build of Array.from({ length: 100 }, () => randomBuild(draw))) {
      const all = everyCombination(build);
      for (const rule of build.rules) {
        if (rule.kind !== 'if-then') continue;
        const { when, wants } = rule;
        const isIdle = !all.some((worn) => worn[when.part] === when.finish);
        seen.add(isIdle);
        expect(neverApplies(build, rule)).toEqual(isIdle ? [when] : []);
        expect(idleWishes(build, rule)).toEqual(
          wants.oneOf
            .filter((finish) => !all.some((worn) => worn[wants.part] === finish))
            .map((finish) => ({ part: wants.part, finish })),
        );
      }
    }
    expect(seen.size).toBe(2);
  });

  it('still applies where an alternative departs from a settled part', () => {
    const rule: Rule = {
      kind: 'never-together',
      first: { part: 'body', finish: ref('teal') },
      second: { part: 'stripes', finish: ref('red') },
    };
    const build = sketched({ parts: { body: 'red', stripes: ['red', 'teal'] }, rules: [rule] });
    expect(neverApplies(build, rule)).toEqual([rule.first]);
    const [first] = build.alternatives;
    const choices = { ...first!.choices, body: ref('teal') };
    expect(neverApplies({ ...build, alternatives: [{ ...first!, choices }] }, rule)).toEqual([]);
  });
});
