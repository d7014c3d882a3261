/**
 * The cost of a generated scheme worked out plainly: objects, no tables, and a CIEDE2000 call of a
 * second library (culori) for every pair and part.
 */
import { differenceCiede2000 } from 'culori';
import { never } from '../../src/ranking/network.ts';
import { type Instance, type Paint, pairCost, wishCost } from './generated.ts';

const difference = differenceCiede2000();
const asColour = ({ lab }: Paint) => ({ mode: 'lab65' as const, l: lab[0], a: lab[1], b: lab[2] });

/** Cost of a scheme, `values` being positions among the candidates; `never` where it may not be. */
export function plainCost(instance: Instance, values: ArrayLike<number>): number {
  const { rack, candidates, wish, strength, neighbours, globals } = instance;
  const worn = candidates.map((list, i) => rack[list[values[i]!]!]!);
  let cost = 0;
  worn.forEach((paint, i) => {
    cost += wishCost(strength, difference(asColour(rack[wish[i]!]!), asColour(paint)));
  });
  for (const pair of neighbours) {
    const [a, b] = [values[pair.i]!, values[pair.j]!];
    if (pair.forbidden.some(([one, other]) => one === a && other === b)) return never;
    if (pair.implied !== undefined && pair.implied[0] === a && pair.implied[1] !== b) return never;
    const [one, other] = [worn[pair.i]!, worn[pair.j]!];
    cost += pairCost(pair, difference(asColour(one), asColour(other)), one, other);
  }
  if (globals === undefined) return cost;
  const finishes = new Set(worn);
  const bottles = [...finishes].filter(({ onHand }) => !onHand).length;
  const echoed = worn.filter((paint) => paint === worn[globals.echo]).length;
  if (bottles > globals.mostBottles || echoed < 2) return never;
  return cost + globals.perFinish * finishes.size + globals.perBottle * bottles;
}

/** Costs of all schemes, rising; those that may not be left out. */
export function plainCosts(instance: Instance): number[] {
  const sizes = instance.candidates.map((list) => list.length);
  const values = sizes.map(() => 0);
  const costs: number[] = [];
  for (;;) {
    const cost = plainCost(instance, values);
    if (cost < never) costs.push(cost);
    let i = 0;
    while (i < sizes.length && ++values[i]! === sizes[i]) values[i++] = 0;
    if (i === sizes.length) return costs.sort((a, b) => a - b);
  }
}
