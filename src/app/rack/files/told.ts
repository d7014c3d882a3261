/** Before finishes are brought in, what exactly will happen? In sentences, with counts. */
import { countOf } from '../told.ts';
import type { Outcome } from './bring.ts';

/** What bringing in would do. */
export function outcomeInWords({ touched, merged, worn }: Outcome): string[] {
  if (merged === undefined) {
    return touched.map(({ name, finishes }) => `“${name}” comes with ${countOf(finishes.length)}.`);
  }
  const { added, replaced, keptBoth, skipped, unchanged, retold, over } = merged;
  const said = (count: number, words: string): string[] =>
    count === 0 ? [] : [`${countOf(count)} ${words}`];
  return [
    ...said(added, added === 1 ? 'is new to this rack.' : 'are new to this rack.'),
    ...said(
      replaced,
      replaced === 1 ? 'takes the place of one that is there.' : 'take the place of those there.',
    ),
    ...said(keptBoth, keptBoth === 1 ? 'stands beside its namesake.' : 'stand beside namesakes.'),
    ...said(skipped, `${skipped === 1 ? 'stays' : 'stay'} out; what is there stays.`),
    ...said(unchanged, `${unchanged === 1 ? 'is' : 'are'} there already, the same.`),
    ...said(over, `${over === 1 ? 'finds' : 'find'} no room: a rack holds 20,000.`),
    ...said(
      retold,
      `of this rack ${retold === 1 ? 'shares a bottle that is' : 'share bottles that are'} now told as the newcomers tell them.`,
    ),
    ...(worn === 0
      ? []
      : [
          `${countOf(worn)} of these ${worn === 1 ? 'is' : 'are'} in the open build and ${worn === 1 ? 'changes' : 'change'} there too.`,
        ]),
  ];
}
