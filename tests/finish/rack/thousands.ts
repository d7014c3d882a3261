/**
 * Thousands of invented finishes to search through: mixed in colour, effect, sheen, chemistry,
 * stock and length of note, named by everyday words. Seeded, so they are the same every time.
 */
import * as v from 'valibot';
import { chemistries, effects, type Finish, finishSchema } from '../../../src/finish/finish.ts';
import type { Shelved } from '../../../src/finish/rack/find.ts';
import { drawFrom } from '../../../src/ground/draw.ts';

const firsts = 'Harbour Pond Rowan Ferry Toffee Plum Slate Cocoa Pewter Moss Lilac Émail'.split(
  ' ',
);
const seconds = 'grey green red blue brown violet black white silver gold copper crème'.split(' ');
const notes =
  'thin with care two mist coats first then wet; dries a shade darker than the lid; keep away from ' +
  'clear tape; strained through a stocking; last used on wheels and mirrors in spring';

/** `count` finishes of one rack, from a seed. */
export function thousandsOf(count: number, seed: number, rack = 'long-shelf'): Shelved[] {
  const draw = drawFrom(seed);
  const pick = <T>(from: readonly T[]): T => from[draw.below(from.length)]!;
  const words = notes.split(' ');
  return Array.from({ length: count }, (_, k) => {
    const note = Array.from({ length: draw.below(60) }, () => pick(words)).join(' ');
    const finish: Finish = v.parse(finishSchema, {
      id: `finish-${k}`,
      name: `${pick(firsts)} ${pick(seconds)} ${k}`,
      effect: pick(effects),
      colour: {
        lab: [5 + 90 * draw.uniform(), 100 * draw.uniform() - 50, 100 * draw.uniform() - 50],
      },
      gloss60: Math.round(100 * draw.uniform()),
      chemistry: pick(chemistries),
      provenance: { how: pick(['measured', 'photo', 'swatch', 'guess']) },
      bottle: { id: `b-${k}`, name: `Bottle ${k}`, onHand: draw.uniform() < 0.4, leadDays: 3 },
      ...(note === '' ? {} : { note }),
    });
    return { rack, ...finish };
  });
}
