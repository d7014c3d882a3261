/**
 * How long must each sort of paint be left alone, and what must be minded while it is wet? Waits
 * per chemistry class as ranges, because the sources differ, with where they come from and how
 * far to trust them.
 *
 * Minutes, hours and days as [low, high] at about 20–23 °C and moderate humidity. Source codes:
 * H4 four independent hobby pages, H5 five, M from memory, S standard or regulator; confidence
 * A firm, B usual, C thin. Every figure is a default the builder may change; the product's own data
 * sheet wins over all of them. Limits: classes, not products; cold, damp or thick films take longer.
 */

import { cautionsOf } from './chemistry.ts';
import type { Chemistry } from './finish.ts';

/** [low, high]. */
export type Span = readonly [low: number, high: number];

export interface CureTimes {
  /** Wait until the next coat of the same paint. */
  readonly betweenCoatsMinutes: Span;
  /** Until it may be held and the next film of another kind may go on. */
  readonly handleHours: Span;
  /** Until masking tape may stand on it. */
  readonly maskHours: Span;
  /** Until it may be sanded, polished or shut in a case. */
  readonly cureDays: Span;
  /** What goes wrong when the wait between coats is missed; empty where nothing special does. */
  readonly recoatTrap: string;
  readonly cautions: readonly string[];
  readonly sources: readonly string[];
  readonly confidence: 'A' | 'B' | 'C';
}

const times: Readonly<Record<Chemistry, Omit<CureTimes, 'cautions'>>> = {
  lacquer: {
    betweenCoatsMinutes: [10, 120],
    handleHours: [12, 24],
    maskHours: [12, 48],
    cureDays: [7, 14],
    recoatTrap: 'Early heavy coats soften what lies below, mottle metallic and lift decals.',
    sources: ['H4', 'M'],
    confidence: 'B',
  },
  acrylic: {
    betweenCoatsMinutes: [15, 360],
    handleHours: [24, 48],
    maskHours: [24, 120],
    cureDays: [1, 5],
    recoatTrap: 'Grips bare plastic poorly: prime first. Stays soft: avoid sanding.',
    sources: ['H5'],
    confidence: 'B',
  },
  enamel: {
    betweenCoatsMinutes: [20, 1440],
    handleHours: [48, 168],
    maskHours: [48, 168],
    cureDays: [7, 30],
    recoatTrap:
      'A second coat goes on inside about 20 minutes or after 24 hours or more; between, it wrinkles.',
    sources: ['H4'],
    confidence: 'B',
  },
  urethane: {
    betweenCoatsMinutes: [5, 15],
    handleHours: [24, 48],
    maskHours: [24, 48],
    cureDays: [2, 10],
    recoatTrap: 'Once cured over lacquer, another coat often wrinkles: plan it as one shot.',
    sources: ['H5', 'M'],
    confidence: 'B',
  },
  none: {
    betweenCoatsMinutes: [0, 0],
    handleHours: [0, 0],
    maskHours: [0, 0],
    cureDays: [0, 0],
    recoatTrap: '',
    sources: ['M'],
    confidence: 'C',
  },
};

/** Waits and cautions of one chemistry class. */
export const cureOf = (chemistry: Chemistry): CureTimes => ({
  ...times[chemistry],
  cautions: cautionsOf(chemistry),
});
