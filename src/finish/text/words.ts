/**
 * What does a builder's own spreadsheet mean by “matt metallic”, “have: x”, “2 weeks”? Everyday
 * words to the words and numbers of a finish.
 *
 * In: the text of one cell, any case. Out: effect, gloss in GU at 60°, chemistry, how a colour was
 * obtained, yes or no, days; undefined where the cell says nothing of the kind. The words are those
 * of the trade (common practice, no source). One gloss stands for each class: near the geometric
 * middle of its bounds in `sheen.ts`, since gloss is judged in ratios, our judgement. [MPI]
 */
import type { Chemistry, Effect, Provenance } from '../finish.ts';

/** GU at 60° that stands for a class where only its word is known. */
export const classGloss = {
  'dead matt': 3,
  matt: 7,
  eggshell: 14,
  satin: 26,
  'semi-gloss': 45,
  gloss: 78,
  'high gloss': 88,
} as const;
export type ClassWord = keyof typeof classGloss;

type Spelt<Meaning> = readonly (readonly [spelling: RegExp, meaning: Meaning])[];

// Longer words come first: “semi-gloss” is not “gloss”, “bare metal” is not “metallic”.
const sheens: Spelt<ClassWord> = [
  [/\b(dead|ultra|super|full)[ -]?(matte?|flat)\b/, 'dead matt'],
  [/\b(high|super|mirror|full|wet)[ -]?(gloss(y)?|look)\b/, 'high gloss'],
  [/\bsemi[ -]?gloss(y)?\b/, 'semi-gloss'],
  [/\bsemi[ -]?(matte?|flat)\b/, 'eggshell'],
  [/\begg ?shell\b/, 'eggshell'],
  [/\b(satin|silk|silky)\b/, 'satin'],
  [/\b(matte?|flat)\b/, 'matt'],
  [/\bgloss(y)?\b/, 'gloss'],
];
const effects: Spelt<Effect> = [
  [/\bbare[ -]?metal\b/, 'bare-metal'],
  [/\b(metal )?foil\b/, 'foil'],
  [/\bpearl(escent)?\b|\bmica\b/, 'pearl'],
  [/\bcand(y|ies)\b/, 'candy'],
  [/\bmetallics?\b|\bmetal ?flake\b|\bflake\b/, 'metallic'],
  [/\bclear( ?coat)?\b|\bvarnish\b/, 'clear'],
  [/\bribbon\b/, 'ribbon'],
  [/\bflock(ing|ed)?\b/, 'flock'],
  [/\brubber\b/, 'rubber'],
  [/\bleather(ette)?\b/, 'leather'],
  [/\blens\b/, 'lens'],
  [/\b(solid|plain|uni)\b/, 'solid'],
];
const chemistries: Spelt<Chemistry> = [
  [/\b(urethane|polyurethane|2[ -]?k|two[ -]part)\b/, 'urethane'],
  [/\benamels?\b/, 'enamel'],
  [/\blacquers?\b/, 'lacquer'],
  [/\b(acrylics?|water([ -]?(based|borne))?)\b/, 'acrylic'],
  [/\bnone\b/, 'none'],
];
const hows: Spelt<Provenance['how']> = [
  [/\b(measured|instrument|spectro\w*|colorimeter|colourimeter)\b/, 'measured'],
  [/\b(photo|photos|photograph(ed)?|picture|camera|scan(ned)?)\b/, 'photo'],
  [/\b(swatch|chip|card|fan|eye|compared)\b/, 'swatch'],
  [/\b(guess(ed)?|estimate[d]?|memory|screen|typed|unknown)\b/, 'guess'],
];

const among =
  <Meaning>(spelt: Spelt<Meaning>) =>
  (cell: string): Meaning | undefined => {
    const text = cell.toLowerCase();
    return spelt.find(([spelling]) => spelling.test(text))?.[1];
  };

/** The sheen class a cell names. */
export const sheenIn = among(sheens);
/** The effect a cell names. */
export const effectIn = among(effects);
/** The paint chemistry a cell names. */
export const chemistryIn = among(chemistries);
/** The way to obtain a colour that a cell names. */
export const howIn = among(hows);

/** Yes or no; a count of bottles says yes from 1. */
export function answerIn(cell: string): boolean | undefined {
  const text = cell.trim().toLowerCase();
  if (/^(yes|y|true|x|✓|✔|☑|have|own(ed)?|in stock|on hand)$/.test(text)) return true;
  if (/^(no|n|false|-|–|—|✗|✘|☐|to buy|buy|wanted|out of stock)$/.test(text)) return false;
  return /^\d+([.,]\d+)?$/.test(text) ? Number(text.replace(',', '.')) > 0 : undefined;
}

/** Days in `5`, `5 days`, `2 weeks`. */
export function daysIn(cell: string): number | undefined {
  const [, count, unit] = /^(\d+(?:[.,]\d+)?)\s*(d|days?|w|wks?|weeks?)?$/i.exec(cell.trim()) ?? [];
  if (count === undefined) return undefined;
  return Number(count.replace(',', '.')) * (/^w/i.test(unit ?? '') ? 7 : 1);
}
