/**
 * Why does one row stand above another? Which scores carry the difference, what is found on the
 * lower row and not on the upper, and where the upper is the worse of the two.
 *
 * Two rows of one ranking in; points of the overall by score, which add up to the difference, and a
 * sentence out. Overalls are weighted geometric means, so logarithms add up; points share them in
 * proportion, by the logarithmic mean of the two overalls. A finding counts by what it costs more
 * on the lower row.
 */
import type { Build } from '../../build/build.ts';
import type { ScoreSheet } from '../../score/comparison.ts';
import { type Evidence, type ScoreKey, scoreKeys } from '../../score/evidence.ts';
import { gainWithout } from '../../score/headline.ts';
import { scoreNames } from '../../score/name.ts';
import { sentenceOf } from '../../score/sentence.ts';
import type { RankedRow } from '../ranking.ts';
import { levelWithin, points, signed } from './figures.ts';
import { readinessInWords } from './ready.ts';
import { differenceInWords } from './words.ts';

/** What one score does to the difference. */
export interface Share {
  readonly score: ScoreKey;
  /** Points of the overall; over 0 where the upper row gains by it. */
  readonly points: number;
}

/** A finding on the lower row that is not on the upper. */
export interface Fault {
  readonly finding: Evidence;
  readonly sentence: string;
  /** The upper row has the same trouble with the same parts, only less of it. */
  readonly isLess: boolean;
}

export interface Why {
  /** By how many points of the overall the upper is ahead. */
  readonly points: number;
  /** The two are level, to what a ranking is proved to. */
  readonly isLevel: boolean;
  /** All six, those that carry most first; they add up to the difference. */
  readonly shares: readonly Share[];
  readonly fault: Fault | undefined;
  /** The score in which the upper is worse by most, where that shows. */
  readonly though: Share | undefined;
  readonly sentence: string;
}

/** Points that show in one decimal. */
const shows = 0.05;
/** Scores named in favour; more would not be read. */
const mostNamed = 2;

/** Why `upper` stands above `lower`. */
export function whyAbove(build: Build, upper: RankedRow, lower: RankedRow): Why {
  const shares = sharesOf(upper.sheet, lower.sheet, build.weights);
  const difference = upper.sheet.overall - lower.sheet.overall;
  const worst = shares.at(-1);
  const told = {
    points: difference,
    isLevel: Math.abs(difference) < levelWithin,
    shares,
    fault: faultOf(upper.sheet, lower.sheet, build, shares),
    though: worst !== undefined && worst.points <= -shows ? worst : undefined,
  };
  return { ...told, sentence: sentenceFor(build, upper, lower, told) };
}

/** What each score does to the difference of two overalls, most in favour of the first on top. */
export function sharesOf(
  upper: ScoreSheet,
  lower: ScoreSheet,
  weights: Readonly<Record<ScoreKey, number>>,
): Share[] {
  const total = scoreKeys.reduce((sum, key) => sum + weights[key], 0);
  const mean = logarithmicMean(upper.overall, lower.overall);
  return scoreKeys
    .map((score): Share => {
      const ratio = Math.log(upper.scores[score] / lower.scores[score]);
      return { score, points: total === 0 ? 0 : (mean * weights[score] * ratio) / total };
    })
    .sort((one, other) => other.points - one.points);
}

/** (a − b) / (ln a − ln b), which is a where both are the same. */
function logarithmicMean(a: number, b: number): number {
  const ratio = Math.log(a / b);
  // The quotient of two differences near 0 is all rounding.
  return Math.abs(ratio) < 1e-6 ? (a + b) / 2 : (a - b) / ratio;
}

/** The finding that costs the lower row most beyond what it costs the upper. */
function faultOf(
  upper: ScoreSheet,
  lower: ScoreSheet,
  { weights }: Build,
  shares: readonly Share[],
): Fault | undefined {
  const gained = new Set(shares.flatMap(({ score, points: p }) => (p >= shows ? [score] : [])));
  const said = new Set(upper.evidence.map(sentenceOf));
  let most = shows;
  let fault: Fault | undefined;
  for (const finding of lower.evidence) {
    // Bottles, days and stripping are counted, not quoted.
    if (finding.score === 'readiness' || !gained.has(finding.score)) continue;
    const alike = upper.evidence.filter((one) => isAbout(one, finding));
    const spared = Math.max(0, ...alike.map(({ cost }) => cost));
    const cost = gainWithout(lower, { ...finding, cost: finding.cost - spared }, weights);
    const sentence = sentenceOf(finding);
    if (cost <= most || said.has(sentence)) continue;
    most = cost;
    fault = { finding, sentence, isLess: alike.length > 0 };
  }
  return fault;
}

const isAbout = (one: Evidence, other: Evidence): boolean =>
  one.score === other.score &&
  one.kind === other.kind &&
  one.parts.some((part) => other.parts.includes(part));

function sentenceFor(
  build: Build,
  upper: RankedRow,
  lower: RankedRow,
  { points: difference, isLevel, shares, fault, though }: Omit<Why, 'sentence'>,
): string {
  const other = `number ${lower.sheet.letter}`;
  const name = ({ score }: Share): string =>
    score === 'readiness'
      ? readinessInWords(upper.sheet, lower.sheet)
      : scoreNames[score].toLowerCase();
  const inFavour = shares.filter((share) => share.points >= shows);
  const gains = inFavour
    .slice(0, mostNamed)
    .map((share) => `${name(share)} ${signed(share.points)}`)
    .join(', ');
  const against = though === undefined ? '' : `${name(though)} ${signed(though.points)}`;
  if (isLevel) {
    const wears = `${capital(other)} has ${differenceInWords(build, upper, lower)}.`;
    if (gains !== '' && against !== '') {
      return `Level with ${other}: ${gains} against ${against}. ${wears}`;
    }
    const isSame = scoreKeys.every(
      (key) => Math.abs(upper.sheet.scores[key] - lower.sheet.scores[key]) < shows,
    );
    return `Level with ${other}${isSame ? ' on every score' : ''}. ${wears}`;
  }
  const by = `${capital(points(difference))} ${difference > 0 ? 'ahead of' : 'behind'} ${other}`;
  const mostly = inFavour.length > mostNamed ? 'mostly ' : '';
  const reasons = [
    ...(gains === '' ? [] : [`${mostly}${gains}`]),
    ...(against === '' ? [] : [`${difference > 0 ? 'though ' : ''}${against}`]),
  ].join(', ');
  const quoted =
    fault === undefined || difference < 0
      ? ''
      : ` At ${other}${fault.isLess ? ', more so' : ''}: ${fault.sentence}`;
  return reasons === '' ? `${by}.${quoted}` : `${by}: ${reasons}.${quoted}`;
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
