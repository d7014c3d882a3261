/**
 * How does a paint differ from one that is known? A builder holds two spoons side by side and says
 * lighter, redder, more vivid, in steps of a told size; the colour follows.
 *
 * Lab is under D65. A step is sized in CIEDE2000 [Sharma2005] along one axis of CIELAB: lightness,
 * a* (green to red), b* (blue to yellow), or chroma at the same hue. About 1 is just seen side by
 * side. Limits: an eye judges such steps to a third or so, which is why a colour obtained this way
 * counts as one read off a swatch.
 */
import { ciede2000 } from '../../colour/difference.ts';
import { chromaOf } from '../../colour/lab.ts';
import { cutText } from '../../ground/id.ts';
import { asLab, type Lab } from '../../ground/unit.ts';
import { appearanceOf } from '../appearance.ts';
import type { Finish } from '../finish.ts';
import { longestNote } from '../finish.ts';
import { flopIndexFrom } from '../flop.ts';
import { colourFromLab, labOf, obtained } from './colour.ts';
import { flopFormOf, isDyed, setFlopIndex } from './effect.ts';

/** Directions in opposite pairs, in the order they are offered. */
export const directions = [
  'lighter',
  'darker',
  'redder',
  'greener',
  'yellower',
  'bluer',
  'more vivid',
  'less vivid',
] as const;
export type Direction = (typeof directions)[number];

/** Sizes of a step, ΔE2000; words our judgement. */
export const stepSizes = [
  { deltaE: 0.5, name: 'a trace' },
  { deltaE: 1, name: 'a little' },
  { deltaE: 3, name: 'plainly' },
] as const;

/** Below this chroma a colour has no hue along which it could become more vivid. */
const greyChroma = 0.5;

/** The lab `t` along a direction; chroma never passes through grey to the other side. */
function along(lab: Lab, direction: Direction, t: number): Lab {
  const [l, a, b] = lab;
  switch (direction) {
    case 'lighter':
      return asLab(Math.min(100, l + t), a, b);
    case 'darker':
      return asLab(Math.max(0, l - t), a, b);
    case 'redder':
      return asLab(l, a + t, b);
    case 'greener':
      return asLab(l, a - t, b);
    case 'yellower':
      return asLab(l, a, b + t);
    case 'bluer':
      return asLab(l, a, b - t);
    case 'more vivid':
    case 'less vivid': {
      const chroma = chromaOf(lab);
      if (chroma < greyChroma) return lab;
      const to = direction === 'more vivid' ? chroma + t : Math.max(0, chroma - t);
      return asLab(l, (a * to) / chroma, (b * to) / chroma);
    }
  }
}

const farthest = 60;

/**
 * The colour one step of `deltaE` (CIEDE2000, up to 10) from `lab` in a direction; as far as there
 * is room where the step does not fit, and the same colour where a grey has no hue to strengthen.
 */
export function stepped(lab: Lab, direction: Direction, deltaE: number): Lab {
  const far = along(lab, direction, farthest);
  if (ciede2000(lab, far) <= deltaE) return far;
  let [near, beyond] = [0, farthest];
  for (let halving = 0; halving < 50; halving++) {
    const middle = (near + beyond) / 2;
    if (ciede2000(lab, along(lab, direction, middle)) < deltaE) near = middle;
    else beyond = middle;
  }
  return along(lab, direction, beyond);
}

/** What is compared: a dye with a dye as recorded, anything else as it looks by daylight. */
const comparedLab = (finish: Finish, isAsDye: boolean): Lab =>
  isAsDye ? labOf(finish.colour) : appearanceOf(finish, 'D65').lab;

/** Takes the colour of a reference, as the start from which one's own is told. */
export function besideColour(finish: Finish, reference: Finish): Finish {
  const lab = comparedLab(reference, isDyed(finish) && isDyed(reference));
  const { sampleGloss60: _sample, ...plain } = withFlopAsIndex(finish);
  const taken = obtained({ ...plain, colour: colourFromLab(lab) }, 'swatch');
  return { ...taken, provenance: { ...taken.provenance, note: noteBeside(taken, reference.name) } };
}

/** Face and flop of another colour would stay behind; how much they turn is kept as an index. */
function withFlopAsIndex(finish: Finish): Finish {
  if (flopFormOf(finish) !== 'colours') return finish;
  const { face, lab, flop } = appearanceOf(finish, 'D65');
  const flopIndex = Math.round(flopIndexFrom(face[0], lab[0], flop[0]) * 10) / 10;
  return setFlopIndex(finish, Math.min(mostFlopIndex, flopIndex));
}
const mostFlopIndex = 30;

/** Moves the colour of the finish by one step. */
export const stepColour = (finish: Finish, direction: Direction, deltaE: number): Finish => ({
  ...finish,
  colour: finelyFrom(stepped(labOf(finish.colour), direction, deltaE)),
});

/** To a hundredth, so that small steps are not lost to rounding. */
function finelyFrom(lab: Lab): Finish['colour'] {
  const held = (value: number, low: number, high: number): number =>
    Math.round(Math.min(high, Math.max(low, value)) * 100) / 100 + 0;
  return {
    lab: [held(lab[0], 0, 100), held(lab[1], -160, 160), held(lab[2], -160, 160)],
    light: 'D65',
  };
}

const beside = /^Beside .*$/m;

/** The note of the provenance with `Beside NAME` in it, once. */
function noteBeside({ provenance: { note = '' } }: Finish, name: string): string {
  const line = `Beside ${name}`;
  if (beside.test(note))
    return cutText(
      note.replace(beside, () => line),
      longestNote,
    );
  return cutText(note.trim() === '' ? line : `${line}\n${note}`, longestNote);
}

export interface Difference {
  /** CIEDE2000 of the two as they look by daylight. */
  readonly deltaE: number;
  /** What differs, the strongest first: `lighter`, `redder`. */
  readonly words: readonly Direction[];
}

/** A share of the largest difference below which an axis is not worth a word, our judgement. */
const worthAWord = 0.35;
const leastStep = 0.3;

/** How the finish differs from the reference, as both look by daylight. */
export function differenceFrom(finish: Finish, reference: Finish): Difference {
  const isAsDye = isDyed(finish) && isDyed(reference);
  return differenceOf(comparedLab(finish, isAsDye), comparedLab(reference, isAsDye));
}

/** How one colour differs from another, in words by the share that each axis has in it. */
export function differenceOf(own: Lab, other: Lab): Difference {
  const deltaE = ciede2000(own, other);
  const chroma = chromaOf(own) - chromaOf(other);
  const apart = (moved: Lab): number => ciede2000(moved, other);
  const named = (by: number, more: Direction, less: Direction, moved: Lab) => ({
    word: by > 0 ? more : less,
    deltaE: apart(moved),
  });
  const vivid = chromaOf(other) < greyChroma ? other : along(other, 'more vivid', chroma);
  const shares = [
    named(own[0] - other[0], 'lighter', 'darker', asLab(own[0], other[1], other[2])),
    named(own[1] - other[1], 'redder', 'greener', asLab(other[0], own[1], other[2])),
    named(own[2] - other[2], 'yellower', 'bluer', asLab(other[0], other[1], own[2])),
    named(chroma, 'more vivid', 'less vivid', vivid),
  ];
  const largest = Math.max(...shares.map((share) => share.deltaE));
  const words = shares
    .filter((share) => share.deltaE >= Math.max(leastStep, worthAWord * largest))
    .sort((one, two) => two.deltaE - one.deltaE)
    .map(({ word }) => word);
  return { deltaE, words };
}
