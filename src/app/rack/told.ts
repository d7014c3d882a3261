/** What a spoon says of its finish beside its name: kind, stock, and how near it is to a colour. */
import type { LightId } from '../../colour/illuminant.ts';
import type { Finish } from '../../finish/finish.ts';
import { leadDaysOf, stockOf } from '../../finish/rack/find.ts';
import { differenceInWords } from '../../finish/rack/nearness.ts';
import { kindOf, lookOf } from '../pieces/look.ts';

/** `to buy, 3 days`; `on hand`; `no bottle recorded`. */
export function stockInWords(finish: Finish): string {
  const stock = stockOf(finish);
  if (stock === 'on hand') return 'on hand';
  if (stock === 'unrecorded') return 'no bottle recorded';
  const days = leadDaysOf(finish);
  return days === 0 ? 'to buy' : `to buy, ${daysInWords(days)}`;
}

/** `1 day`, `2.5 days`. */
export const daysInWords = (days: number): string => `${days} ${days === 1 ? 'day' : 'days'}`;

/** `ΔE 3.2: close`; never a percentage. */
export const nearInWords = (deltaE: number): string =>
  `ΔE ${deltaE.toFixed(1)}: ${differenceInWords(deltaE)}`;

/** Words that stay on one line where they can. */
const together = (words: string): string => words.replaceAll(' ', '\u00a0');

/** The lines under the name of a spoon. */
export function noteOf(finish: Finish, light: LightId, deltaE?: number): string {
  const kind = together(kindOf(finish, lookOf(finish, light)));
  const facts = `${kind}; ${together(stockInWords(finish))}`;
  return deltaE === undefined ? facts : `${together(nearInWords(deltaE))}\n${facts}`;
}

const thousands = new Intl.NumberFormat('en-GB');

/** `10,000`. */
export const numberInWords = (count: number): string => thousands.format(count);

/** `1 finish`, `10,000 finishes`. */
export const countOf = (count: number): string =>
  `${numberInWords(count)} ${count === 1 ? 'finish' : 'finishes'}`;
