/** Seeded rules of every kind for the demo's open parts; they may well contradict each other. */
import { isOpen, type Rule } from '../../../src/build/build.ts';
import type { Draw } from '../../../src/ground/draw.ts';
import { demo, drawn } from './every.ts';

const candidatesOf = (id: string): readonly string[] => {
  const part = demo.parts.find((one) => one.id === id);
  return part !== undefined && isOpen(part) ? part.candidates : [];
};

/** One rule about some of these parts, each with at least two candidates. */
export function drawnRule(open: readonly string[], draw: Draw): Rule {
  const [one, other] = drawn(open, 2, draw) as [string, string];
  const wears = (part: string) => ({ part, finish: drawn(candidatesOf(part), 1, draw)[0]! });
  const alike = open.find(
    (id) => id !== one && candidatesOf(id).some((ref) => candidatesOf(one).includes(ref)),
  );
  const count = draw.below(3);
  const kinds: readonly Rule[] = [
    { kind: 'same', parts: [one, alike ?? other] },
    {
      kind: 'if-then',
      when: wears(one),
      wants: { part: other, oneOf: drawn(candidatesOf(other), 1 + draw.below(2), draw) },
    },
    { kind: 'never-together', first: wears(one), second: wears(other) },
    { kind: 'must-echo', part: one },
    { kind: 'most-new-bottles', count },
    // The demo wears nine finishes whatever is chosen.
    { kind: 'most-finishes', count: 13 + count },
    { kind: 'ready-by', date: `2031-05-${12 + 3 * draw.below(6)}` },
    { kind: 'most-share', part: one, percent: 2 + 6 * draw.below(5) },
  ];
  return kinds[draw.below(kinds.length)]!;
}
