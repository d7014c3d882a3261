/**
 * How surely one alternative is ahead. Oracles: the same pair among other alternatives, and the
 * build scored again from nothing with one finish said to be known exactly.
 */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { assignmentOf, type Build, refOf } from '../../src/build/build.ts';
import type { SightTable } from '../../src/car/table.ts';
import type { Closeness } from '../../src/score/comparison.ts';
import { aheadIn100 } from '../../src/score/confidence.ts';
import { judge } from '../../src/score/judged.ts';
import { closenessSentence } from '../../src/score/sentence.ts';
import { compareAlternatives } from '../../src/score/sheet.ts';
import { buildOf, schemes } from './schemes.ts';

const sight = JSON.parse(
  readFileSync(new URL('../../models/roadster.sight.json', import.meta.url), 'utf8'),
) as SightTable;
const today = '2031-05-01';
const all = buildOf(Object.keys(schemes));

/** All schemes are there to choose from; these are compared. */
const comparing = (...ids: string[]): Build => ({
  ...all,
  alternatives: ids.map((id) => all.alternatives.find((one) => one.id === id)!),
});
const known = (build: Build, deltaE: number, only?: string): Build => ({
  ...build,
  finishes: build.finishes.map((finish) =>
    only === undefined || refOf(finish) === only
      ? { ...finish, provenance: { how: 'guess', deltaE } }
      : finish,
  ),
});
const closenessIn = (build: Build): readonly Closeness[] =>
  compareAlternatives(build, sight, { today }).closeness;
const pairIn = (build: Build, a: string, b: string): Closeness =>
  closenessIn(build).find((pair) => [a, b].includes(pair.a) && [a, b].includes(pair.b))!;

describe('how surely one is ahead', () => {
  it('is the same for a pair whatever the others wear, and wherever it stands', () => {
    const rough = known(comparing('s03', 's06'), 8);
    const alone = pairIn(rough, 's03', 's06');
    for (const third of ['s01', 's08', 's13']) {
      const more = known(comparing(third, 's06', 's03'), 8);
      expect(pairIn(more, 's03', 's06')).toEqual(alone);
    }
  });

  it('is told of two that wear the same as being alike, and of no others', () => {
    const [one, other] = comparing('s01', 's03').alternatives;
    const build = { ...all, alternatives: [one!, { ...one!, id: 'twin' }, other!] };
    const told = closenessIn(build).map((pair) => closenessSentence(pair, (id) => id));
    expect(told[0]).toBe('s01 and twin are alike so far.');
    expect(told.slice(1).join()).not.toContain('alike');
  });
});

describe('two that are apart in numbers and too close to call', () => {
  const rough = known(all, 12);
  const overalls = new Map(
    compareAlternatives(rough, sight, { today, withoutCloseness: true }).alternatives.map(
      ({ id, overall }) => [id, overall],
    ),
  );
  const unsure = closenessIn(rough).filter((pair) => pair.unsure !== undefined);

  it('have a reason, and nobody else has', () => {
    expect(unsure.length).toBeGreaterThan(2);
    for (const { a, b, aheadIn100 } of unsure) {
      expect(overalls.get(a)! - overalls.get(b)!).toBeGreaterThanOrEqual(10);
      expect(aheadIn100).toBeLessThan(90);
    }
  });

  it('hang most on the colour that is named: known exactly, it does what is said, and no other does more', () => {
    for (const { a, b, aheadIn100: now, unsure: named } of unsure.slice(0, 1)) {
      const pair = { ...rough, alternatives: comparing(a, b).alternatives };
      const aheadIf = (ref: string): number => {
        const judged = judge(known(pair, 0, ref), sight, { today });
        const choices = [a, b].map((id) =>
          judged.choiceOf(
            assignmentOf(judged.build, pair.alternatives.find((one) => one.id === id)!),
          ),
        );
        return aheadIn100(judged.terms, choices, pair.weights)[0]![1]!;
      };
      const { ref } = named!;
      expect(named!.aheadIn100).toBe(aheadIf(ref));
      expect(named!.aheadIn100).toBeGreaterThan(now);
      const worn = new Set(pair.alternatives.flatMap(({ choices }) => Object.values(choices)));
      for (const other of worn) expect(aheadIf(other)).toBeLessThanOrEqual(named!.aheadIn100);
    }
  });

  it('are told with the name, how its colour was obtained and how far it may be off', () => {
    const pair: Closeness = {
      a: 'A',
      b: 'B',
      aheadIn100: 83,
      unsure: { ref: 'x/pan', name: 'Copper pan', how: 'guess', deltaE: 8, aheadIn100: 97.5 },
    };
    expect(closenessSentence(pair, (id) => id)).toBe(
      'A and B are too close to call; ask your viewers. A is ahead 83 times of 100. Copper pan’s ' +
        'colour is a guess, within about ΔE 8; were it certain, A would be ahead 98 times of 100.',
    );
  });

  it('never says always where it was not', () => {
    const pair: Closeness = { a: 'A', b: 'B', aheadIn100: 99.5 };
    expect(closenessSentence(pair, (id) => id)).toBe('A stays ahead of B 99 times of 100.');
  });
});
