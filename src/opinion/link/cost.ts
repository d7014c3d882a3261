/**
 * What makes a link long, and what would viewers lose without it? Each thing that can be left out
 * is measured by making the link without it, so the figures are what would really be saved.
 *
 * In: a build and what its builder asks. Out: what costs most, first, in characters. Limits: what
 * two things share is packed once, so two together save more or less than their sum; each figure is
 * for leaving out that one alone. Where only two alternatives are asked about, neither can go. What
 * saves nothing is not told.
 */
import type { Build, EmbeddedFinish } from '../../build/build.ts';
import type { Colour } from '../../finish/finish.ts';
import { cutText } from '../../ground/id.ts';
import { wordsFrom } from '../reply/words.ts';
import { type Asking, lettersIn, roundOf } from '../round.ts';
import { linkOf } from './link.ts';

/** Something that can be left out. */
export interface Cost {
  readonly kind: 'alternative' | 'story' | 'spectra' | 'finish names';
  /** What it is, as a builder says it; stands in a sentence. */
  readonly what: string;
  /** Characters that the link is shorter without it, above 0. */
  readonly characters: number;
  /** What viewers would lose; stands in a sentence behind “without it, viewers lose”. */
  readonly loses: string;
  /** What to ask so that it is left out. */
  readonly asking: Asking;
}

/** Viewers need two to choose from. */
const fewestAsked = 2;
/** Names are cut to this, UTF-16 units. Our judgement. */
const longestName = 60;

/** What can be left out, the costliest first. Throws `InputError` where no link can be made. */
export function costsOf(build: Build, asking: Asking = {}): readonly Cost[] {
  const whole = linkOf(roundOf(build, asking)).length;
  return droppable(build, asking)
    .map((one) => ({ ...one, characters: whole - linkOf(roundOf(build, one.asking)).length }))
    .filter(({ characters }) => characters > 0)
    .sort((one, other) => other.characters - one.characters);
}

type Droppable = Omit<Cost, 'characters'>;

function droppable(build: Build, asking: Asking): readonly Droppable[] {
  const { finishes, story, viewing } = roundOf(build, asking).build;
  const spectral = finishes.filter(hasSpectrum).length;
  return [
    ...alternativesIn(build, asking),
    ...(story === undefined
      ? []
      : [
          {
            kind: 'story' as const,
            what: 'the story of the build',
            loses: 'why the car is to look that way',
            asking: { ...asking, withStory: false },
          },
        ]),
    ...(spectral === 0
      ? []
      : [
          {
            kind: 'spectra' as const,
            what: spectral === 1 ? 'the spectrum of one finish' : `spectra of ${spectral} finishes`,
            loses: lostSpectra(spectral === 1, viewing.light === 'D65'),
            asking: { ...asking, withSpectra: false },
          },
        ]),
    ...(asking.withFinishNames === false
      ? []
      : [
          {
            kind: 'finish names' as const,
            what:
              finishes.length === 1
                ? 'the name of one finish'
                : `names of ${finishes.length} finishes`,
            loses: 'what the finishes are called: each is called by its effect, such as Pearl',
            asking: { ...asking, withFinishNames: false },
          },
        ]),
  ];
}

/** By daylight only dyed finishes keep a spectrum. */
function lostSpectra(isOne: boolean, isDaylight: boolean): string {
  const whose = isOne ? 'its' : 'their';
  return isDaylight
    ? `how light passes through ${whose} dye, band by band: it is worked out of ${whose} colour instead`
    : `how ${whose} ${isOne ? 'colour turns' : 'colours turn'} under this light: that is worked out of ${whose} look by daylight instead`;
}

/** Each alternative asked about, where enough are left without it. */
function alternativesIn(build: Build, asking: Asking): Droppable[] {
  const letters = lettersIn(roundOf(build, asking));
  const asked = build.alternatives
    .filter(({ id }) => asking.alternatives?.includes(id) ?? true)
    .slice(0, letters.length);
  if (asked.length <= fewestAsked) return [];
  return asked.map(({ id, name }, at) => {
    const letter = letters[at] ?? '';
    const words = cutText(wordsFrom(name), longestName);
    return {
      kind: 'alternative',
      what: `alternative ${letter}${words === '' || words === letter ? '' : `, “${words}”`}`,
      loses: `the choice of ${letter}`,
      asking: {
        ...asking,
        alternatives: asked.filter((one) => one.id !== id).map((one) => one.id),
      },
    };
  });
}

const isSpectrum = (colour: Colour | undefined): boolean =>
  colour !== undefined && 'spectrum' in colour;

const hasSpectrum = ({ colour, face, flop, undercoats, clear }: EmbeddedFinish): boolean =>
  [colour, face, flop, clear?.tint, ...undercoats.map((film) => film.colour)].some(isSpectrum);
