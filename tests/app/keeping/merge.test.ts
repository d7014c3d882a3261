/**
 * Racks changed in two tabs at once. Oracle: the same told plainly, finish by finish in a map from
 * rack and finish to what was written there last. Invented racks; seeds are fixed.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { changesBetween, isNothing, withChanges } from '../../../src/app/keeping/merge.ts';
import type { Finish } from '../../../src/finish/finish.ts';
import type { Rack } from '../../../src/finish/rack/rack.ts';
import { finishWith } from '../../finish/sample.ts';

const seed = 20311124;

/** `a:1 b:2` is a rack of the finishes a and b in their first and second state. */
const rackOf = (id: string, finishes: string, name = `Rack ${id}`): Rack => ({
  format: 'testspoon-rack',
  version: 1,
  id,
  name,
  finishes: finishes
    .split(' ')
    .filter((one) => one !== '')
    .map((one) => {
      const [key = '', state = ''] = one.split(':');
      return finishWith({ id: key, name: `${key} in state ${state}` });
    }),
});

const anyRack = (id: string): fc.Arbitrary<Rack> =>
  fc
    .tuple(
      fc.shuffledSubarray(['a', 'b', 'c', 'd', 'e']),
      fc.array(fc.integer({ min: 1, max: 3 }), { minLength: 5, maxLength: 5 }),
      fc.constantFrom('Mine', 'Ours'),
    )
    .map(([keys, states, name]) =>
      rackOf(id, keys.map((key, at) => `${key}:${states[at]}`).join(' '), name),
    );
const anyRacks: fc.Arbitrary<readonly Rack[]> = fc
  .tuple(
    fc.shuffledSubarray(['one', 'two', 'three']),
    anyRack('one'),
    anyRack('two'),
    anyRack('three'),
  )
  .map(([ids, ...racks]) => ids.map((id) => racks.find((rack) => rack.id === id)!));

/** Every finish by `rack/finish`. */
const flat = (racks: readonly Rack[]): Map<string, Finish> =>
  new Map(racks.flatMap((rack) => rack.finishes.map((one) => [`${rack.id}/${one.id}`, one])));
const told = (finishes: ReadonlyMap<string, Finish>): string[] =>
  [...finishes].map(([key, { name }]) => `${key} ${name}`).sort();

describe('changes of racks', () => {
  it('lead from one state to the other, whatever the two are', () => {
    fc.assert(
      fc.property(anyRacks, anyRacks, (before, after) => {
        expect(withChanges(before, changesBetween(before, after))).toEqual(after);
      }),
      { seed, numRuns: 500 },
    );
  });

  it('are nothing between racks that tell the same', () => {
    const [one, again] = [rackOf('one', 'a:1 b:2'), rackOf('one', 'a:1 b:2')];
    const changes = changesBetween([one], [again]);
    expect(isNothing(changes)).toBe(true);
    expect(withChanges([one], changes)[0]).toBe(one);
  });

  it('leave every finish they do not touch the very same', () => {
    const before = [rackOf('one', 'a:1 b:1'), rackOf('two', 'c:1')];
    const changes = changesBetween(before, [rackOf('one', 'a:1 b:2'), before[1]!]);
    const after = withChanges(before, changes);
    expect(after[1]).toBe(before[1]);
    expect(after[0]!.finishes[0]).toBe(before[0]!.finishes[0]);
  });
});

describe('two tabs that change racks at once', () => {
  it('come together finish by finish, the change that came last counting', () => {
    fc.assert(
      fc.property(anyRacks, anyRacks, anyRacks, (before, first, last) => {
        const met = withChanges(
          withChanges(before, changesBetween(before, first)),
          changesBetween(before, last),
        );

        const sameRack = (id: string, one: readonly Rack[], other: readonly Rack[]): boolean => {
          const [there, here] = [one, other].map((all) => all.find((rack) => rack.id === id));
          return JSON.stringify(there) === JSON.stringify(here);
        };
        const expected = flat(first);
        const [were, are] = [flat(before), flat(last)];
        const lastIds = new Set(last.map(({ id }) => id));
        for (const key of new Set([...were.keys(), ...are.keys()])) {
          if (were.get(key)?.name === are.get(key)?.name) continue;
          const [rack = ''] = key.split('/');
          const now = are.get(key);
          if (now !== undefined) expected.set(key, now);
          // Taken away with its rack, which stays if the first has changed it.
          else if (lastIds.has(rack) || sameRack(rack, before, first)) expected.delete(key);
        }
        // A rack that the first took away and the last changed is there again, whole.
        const firstIds = new Set(first.map(({ id }) => id));
        for (const rack of last) {
          if (firstIds.has(rack.id) || sameRack(rack.id, before, last)) continue;
          for (const one of rack.finishes) expected.set(`${rack.id}/${one.id}`, one);
        }
        expect(told(flat(met))).toEqual(told(expected));
      }),
      { seed, numRuns: 500 },
    );
  });

  it('never lose a rack that one of them has changed', () => {
    const before = [rackOf('one', 'a:1'), rackOf('two', 'b:1')];
    const without = changesBetween(before, [before[1]!]);
    const edited = changesBetween(before, [rackOf('one', 'a:2'), before[1]!]);
    for (const order of [
      [without, edited],
      [edited, without],
    ]) {
      const met = order.reduce(withChanges, before as readonly Rack[]);
      expect(met.map(({ id }) => id)).toContain('one');
      expect(met.find(({ id }) => id === 'one')?.finishes[0]?.name).toBe('a in state 2');
    }
  });

  it('keep what each has added, and the order one of them has made', () => {
    const before = [rackOf('one', 'a:1 b:1')];
    const added = changesBetween(before, [rackOf('one', 'a:1 c:1 b:1')]);
    const turned = changesBetween(before, [rackOf('one', 'b:1 a:1')]);
    const ids = (racks: readonly Rack[]): string[] => racks[0]!.finishes.map(({ id }) => id);
    expect(ids(withChanges(withChanges(before, added), turned))).toEqual(['b', 'a', 'c']);
    expect(ids(withChanges(withChanges(before, turned), added)).sort()).toEqual(['a', 'b', 'c']);
  });

  it('tell a bottle that finishes share as the last of them did', () => {
    const bottle = { id: 'jar', name: 'Jar', onHand: false, leadDays: 3 };
    const shared = (onHand: boolean, id: string) =>
      finishWith({ id, name: id, bottle: { ...bottle, onHand } });
    const before: Rack[] = [{ ...rackOf('one', ''), finishes: [shared(false, 'a')] }];
    const added = changesBetween(before, [
      { ...before[0]!, finishes: [shared(false, 'a'), shared(false, 'b')] },
    ]);
    const bought = changesBetween(before, [{ ...before[0]!, finishes: [shared(true, 'a')] }]);
    const met = withChanges(withChanges(before, added), bought)[0]!;
    expect(met.finishes.map(({ bottle: one }) => one?.onHand)).toEqual([true, true]);
  });
});
