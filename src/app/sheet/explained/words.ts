/**
 * Each score explained to a builder: what it asks, where it comes from, what is our judgement, what
 * it cannot know, and what the units in its sentences mean. Figures follow `score/judgement` and
 * DEVELOPERS.md, *The scores*.
 */
import type { ScoreKey } from '../../../score/evidence.ts';

export interface Explanation {
  readonly asks: string;
  readonly source: string;
  readonly judgement: string;
  readonly limits: string;
  /** What stands in its sentences, and what it means. */
  readonly units: readonly (readonly [unit: string, meaning: string])[];
}

const lightness: readonly [string, string] = [
  'ΔL*',
  'difference in lightness alone; black to white is 100, and about 1 is just seen side by side on large areas',
];
const steps: readonly [string, string] = [
  'visible steps',
  'how many times over the difference that half of all viewers see at that size; under 1 is likely lost, from 3 it reads at a glance',
];
const deltaE: readonly [string, string] = [
  'ΔE2000',
  'difference of two colours in lightness, strength and hue together; about 1 is just seen, 10 is plain',
];
const gloss: readonly [string, string] = [
  'GU',
  'gloss units, measured at 60°; 5 is dead matt, 25 satin, 85 and more full gloss',
];

export const explanations: Readonly<Record<ScoreKey, Explanation>> = {
  contrast: {
    asks:
      'Does every part that was chosen to be seen stand out from what is beside it, at its size on the model and from where you look? ' +
      'Small parts need more difference than large ones. The same finish on both sides is a choice and costs nothing.',
    source:
      'How much difference a small patch or a thin line needs: Stone, Szafir and Setlur 2014; Szafir 2018. Sizes are measured on the car itself.',
    judgement:
      'How much each part counts, by the area it shows; that trim against trim may blend; how quickly the score falls once a part is hard to see.',
    limits:
      'Those studies used ordinary screens, not painted models: read “likely to read”, not “will read”.',
    units: [['mm', 'the part’s smallest visible width on your model'], lightness, deltaE, steps],
  },
  accent: {
    asks: 'Is there a small, strong colour that stands out, does it show again in another place, and are two of its places often seen at once?',
    source: 'No study settles this. It is our judgement throughout, measured on the car itself.',
    judgement:
      'An accent covers up to 3 % of the car, and is none from 6 %. Shown in one place only it costs most; seen together from 30 of 100 views is enough. One accent is best, two share the eye, three compete.',
    limits:
      'Coloured brake calipers alone are liked by many. A scheme meant to be of one colour should be declared tonal; then no accent is asked for.',
    units: [
      [
        'of 100 views',
        'the car is judged from nine places around it, those one looks from most counting most; 87 of 100 means that so much of all looking shows both',
      ],
      ['% of the car', 'share of all that is seen of the car from those places'],
    ],
  },
  sheen: {
    asks:
      'Where two painted parts touch, is their gloss the same, or plainly different? Nearly the same looks like a mistake. ' +
      'Also: flake wants gloss over it, and flock, ribbon or leather belong in the cabin.',
    source:
      'Gloss is measured as ISO 2813 has it. No agreed scale says how far apart two glosses look.',
    judgement:
      'The steps from dead matt to full gloss, from where a difference looks meant, and which materials go where.',
    limits: 'Cloth and bare metal are left out: nobody expects them to match paint.',
    units: [gloss],
  },
  harmony: {
    asks: 'Are two paints in one area the same or plainly two, rather than so close that one looks like a failed match for the other? 100 means nothing is too close.',
    source:
      'Colour difference by CIEDE2000: Sharma, Wu and Dalal 2005. The remark on a pair’s harmony is a formula by Ou and Luo 2006; it is told, never scored.',
    judgement:
      'From 3 to 8 is too close, 20 is plainly two; neutrals are told apart sooner. Parts of the bodywork count double.',
    limits:
      'This is not harmony and not taste. On 348 published combinations the best-known formula for harmony did no better than chance; keeping colours apart is a weak but real sign.',
    units: [
      deltaE,
      lightness,
      ['hue … ° apart', 'distance round the colour circle; 180° is opposite'],
    ],
  },
  steadiness: {
    asks: 'Do small parts that read by day still read under a warm lamp and an LED, and to the eyes of people who are red-weak or green-weak?',
    source:
      'Lamps are the standard lights D65, A and LED-B3 of CIE 015:2018. Colour-weak eyes after Machado, Oliveira and Fernandes 2009. Sizes as for contrast.',
    judgement: 'Only parts under 3 mm count; half for lamps, half for eyes.',
    limits:
      'Where a colour was not measured as a spectrum, what a lamp does to it is an estimate. The eyes are those of full colour-weakness; most people have less.',
    units: [steps, lightness],
  },
  readiness: {
    asks: 'What is between you and the finished model: bottles to buy, paint to strip, days to wait?',
    source:
      'Bottles and delivery as your racks say; cure times as general hobby practice. The product’s own sheet wins.',
    judgement:
      'A bottle costs less than stripping a part; days count only once they are past the date you want.',
    limits:
      'The earliest that paint allows: evenings without time, masking and second tries are not in it.',
    units: [['days', 'from today until the last film has cured, at the earliest']],
  },
};
