/**
 * What do several parts share? Bottles to buy, paid for once however many parts use them, and what
 * limits count: new bottles, and different finishes.
 */
import type { Build, FinishRef } from '../../build/build.ts';
import { newBottlesIn } from '../../build/choice/choice.ts';
import type { Judged } from '../../score/judged.ts';
import { bottleCost } from '../../score/judgement.ts';
import type { Limit, Things } from '../network.ts';
import type { Shares } from './shares.ts';
import type { Slot } from './slots.ts';
import type { Variables } from './variables.ts';

/** Things of a network; undefined where nothing is paid for or counted. */
export function thingsOf(judged: Judged, variables: Variables, shares: Shares): Things | undefined {
  const names = new Map<string, number>();
  const numberOf = (name: string): number => {
    const known = names.get(name) ?? names.size;
    names.set(name, known);
    return known;
  };
  const usedWith = usesIn(judged, shares.readiness > 0);
  const used = (slot: Slot, ref: FinishRef): number[] => [
    ...new Set(usedWith(slot, ref).map(numberOf)),
  ];
  const always = variables.certain.flatMap((slot) => slot.refs.flatMap((ref) => used(slot, ref)));
  const usedBy = variables.slots.map((slot) => slot.refs.map((ref) => used(slot, ref)));
  if (names.size === 0) return undefined;
  const all = [...names.keys()];
  return {
    cost: Float64Array.from(all, (name) =>
      name.startsWith(paidFor) ? shares.readiness * bottleCost : 0,
    ),
    usedBy,
    always: [...new Set(always)],
    limits: limitsOf(judged.build, all),
  };
}

// Finishes and bottles are counted, and bottles paid for, under names that cannot meet.
const paidFor = 'paid for: ';
const counted = { 'most-new-bottles': 'bottle: ', 'most-finishes': 'finish: ' } as const;
type CountingKind = keyof typeof counted;
const isCounting = (kind: string): kind is CountingKind => kind in counted;

/**
 * Names of the things that a slot uses in a finish. What is paid for stands apart from what is
 * counted: a part too hidden to have a surface costs nothing on the sheet, yet its bottles count.
 */
function usesIn(judged: Judged, isPaying: boolean): (slot: Slot, ref: FinishRef) => string[] {
  const { build, terms } = judged;
  const kinds = new Set(build.rules.map(({ kind }) => kind));
  const newBottles = newBottlesIn(build);
  return ({ parts }, ref) =>
    parts.flatMap(({ id }) => {
      const at = terms.scene.positions.get(id);
      const candidate =
        at === undefined ? undefined : terms.candidates[at]!.find(({ worn }) => worn.ref === ref);
      const toPay = isPaying ? (candidate?.preparation.toBuy ?? []) : [];
      const toCount = kinds.has('most-new-bottles') ? newBottles(id, ref) : [];
      return [
        ...toPay.map((bottle) => paidFor + bottle),
        ...toCount.map((bottle) => counted['most-new-bottles'] + bottle),
        ...(kinds.has('most-finishes') ? [counted['most-finishes'] + ref] : []),
      ];
    });
}

function limitsOf({ rules }: Build, names: readonly string[]): Limit[] {
  return rules.flatMap((rule): Limit[] => {
    if (!isCounting(rule.kind) || !('count' in rule)) return [];
    const prefix = counted[rule.kind];
    const counts = Uint8Array.from(names, (name) => (name.startsWith(prefix) ? 1 : 0));
    return [{ counts, most: rule.count }];
  });
}
