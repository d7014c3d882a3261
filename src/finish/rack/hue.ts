/**
 * What colour would a builder call this finish? Red, dark green, gold: by its recorded colour,
 * whatever it is named, so that a search for a colour word finds all that have the colour.
 *
 * Each word is one or more boxes of CIELAB lightness L* (0 to 100), chroma C*ab and hue angle
 * (degrees), D65; neighbours overlap, since petrol is found under blue and under teal. The eleven
 * basic words of English and a few of the trade; boundaries are our judgement, held against the
 * names that [KellyJudd1976] gives to 267 colours. Words of metals are for what glitters or is metal.
 * Limits: the recorded colour alone, not what lies beneath; Lab figures for D50 are taken as they
 * stand, since they are relative to their white.
 */
import { chromaOf, hueDegreesOf } from '../../colour/lab.ts';
import { asLab, type Lab } from '../../ground/unit.ts';
import { labOf } from '../edit/colour.ts';
import type { Effect, Finish } from '../finish.ts';

/** From a bound to below another; a hue may pass 360, as 340 to 400 does. */
type Span = readonly [from: number, to: number];
interface Box {
  readonly hue?: Span;
  readonly lightness?: Span;
  readonly chroma?: Span;
}

const most = 1000;
const box = (hue: Span | undefined, lightness: Span, chroma: Span): Box => ({
  ...(hue && { hue }),
  lightness,
  chroma,
});
const red = [
  box([350, 409], [0, 59], [13, most]),
  box([338, 410], [0, 36], [8, most]),
  box([350, 395], [59, 62], [13, 25]),
];
const purple = [box([290, 350], [0, 100], [8, most])];
const grey = [
  box(undefined, [22, 79], [0, 9]),
  box([60, 112], [22, 79], [0, 12]),
  box(undefined, [79, 90], [0, 4]),
];
const gold = [box([66, 101], [55, 100], [14, most])];
const maroon = [box([340, 400], [10, 32], [15, most])];
const teal = [box([180, 240], [15, 60], [10, most])];
const dark = [box(undefined, [0, 38], [0, most])];
const light = [box(undefined, [68, 101], [0, most])];

/** Any surface. */
const colours: Readonly<Record<string, readonly Box[]>> = {
  red,
  orange: [
    box([38, 80], [50, 100], [40, most]),
    box([38, 50], [38, 50], [42, most]),
    box([38, 48], [50, 75], [30, 40]),
  ],
  brown: [
    box([38, 87], [0, 58], [7, 53]),
    box([20, 38], [0, 40], [9, 42]),
    box([40, 84], [58, 68], [10, 34]),
  ],
  yellow: [box([80, 113], [58, 101], [25, most]), box([70, 80], [58, 101], [29, most])],
  green: [
    box([111, 205], [25, 101], [7, most]),
    box([105, 111], [45, 101], [20, most]),
    box([100, 205], [0, 25], [5, most]),
  ],
  blue: [box([192, 305], [25, 101], [8, most]), box([205, 305], [0, 25], [5, most])],
  purple,
  violet: purple,
  pink: [
    box([340, 411], [57, 101], [6, 60]),
    box([411, 430], [70, 101], [10, 16]),
    box([340, 370], [44, 57], [38, most]),
  ],
  white: [box(undefined, [84, 101], [0, 12])],
  grey,
  gray: grey,
  black: [box(undefined, [0, 20], [0, 7]), box(undefined, [20, 28], [0, 5])],
  beige: [box([50, 108], [60, 90], [8, 26])],
  cream: [box([65, 110], [78, 97], [7, 42])],
  tan: [box([52, 86], [45, 75], [18, 42])],
  olive: [box([80, 126], [14, 60], [9, 60])],
  mint: [box([138, 188], [74, 96], [12, 45])],
  teal,
  turquoise: [box([175, 235], [40, 92], [9, most])],
  navy: [box([250, 308], [5, 32], [10, 50])],
  maroon,
  burgundy: maroon,
  lilac: [box([290, 345], [55, 95], [11, 50])],
  dark,
  deep: dark,
  light,
  pale: light,
};

/** Only what glitters, or is metal. */
const metals: Readonly<Record<string, readonly Box[]>> = {
  gold,
  brass: gold,
  copper: [box([34, 63], [35, 80], [20, most])],
  bronze: [box([46, 88], [22, 60], [13, 60])],
};
/** Only what shines of itself. */
const bareMetals: Readonly<Record<string, readonly Box[]>> = {
  silver: [box(undefined, [45, 101], [0, 9])],
  gunmetal: [box(undefined, [15, 48], [0, 9])],
};
const glittering: readonly Effect[] = ['metallic', 'pearl', 'candy', 'foil', 'bare-metal'];
const shining: readonly Effect[] = ['metallic', 'foil', 'bare-metal'];
const seeThrough: readonly Effect[] = ['clear', 'lens'];

/** Every colour word that can be looked for. */
export const colourWords: readonly string[] = [colours, metals, bareMetals].flatMap(Object.keys);

/** The words for the colour of a finish, `red` before `maroon`; none for water-clear coats. */
export function colourWordsOf(finish: Finish): string[] {
  const { colour, effect } = finish;
  const lab = 'lab' in colour ? asLab(...colour.lab) : labOf(colour);
  const isMetal = shining.includes(effect);
  return [
    ...wordsFor(lab, colours).filter(
      (word) => word !== 'white' || !(isMetal || seeThrough.includes(effect)),
    ),
    ...(glittering.includes(effect) ? wordsFor(lab, metals) : []),
    ...(isMetal ? wordsFor(lab, bareMetals) : []),
  ];
}

function wordsFor(lab: Lab, regions: Readonly<Record<string, readonly Box[]>>): string[] {
  const [lightness] = lab;
  const chroma = chromaOf(lab);
  const hue = hueDegreesOf(lab);
  const isIn = (one: Box): boolean =>
    within(lightness, one.lightness) &&
    within(chroma, one.chroma) &&
    (within(hue, one.hue) || within(hue + 360, one.hue));
  return Object.keys(regions).filter((word) => regions[word]!.some(isIn));
}

const within = (value: number, span: Span | undefined): boolean =>
  span === undefined || (value >= span[0] && value < span[1]);
