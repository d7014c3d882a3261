/**
 * Why does one row stand above another? Which scores carry the difference, what is found on the one
 * row and not on the other, and where the upper is the worse of the two.
 *
 * Two rows of one ranking in; points of the overall by score, and sentences out.
 */
import type { Build } from '../../build/build.ts';
import { scoreKeys } from '../../score/evidence.ts';
import { scoreNames } from '../../score/name.ts';
import type { RankedRow } from '../ranking.ts';
import { levelWithin, points, signed } from './figures.ts';
import { readinessInWords } from './ready.ts';
import { type Share, sharesOf } from './share.ts';
import { type Fault, faultOf, meritOf, type Telling } from './telling.ts';
import { differenceInWords } from './words.ts';

export interface Why {
  /** By how many points of the overall the upper is ahead. */
  readonly points: number;
  /** The two are level, to what a ranking is proved to. */
  readonly isLevel: boolean;
  /** All six, those that carry most first; they add up to the difference. */
  readonly shares: readonly Share[];
  readonly fault: Fault | undefined;
  /** Where there is no fault to tell. */
  readonly merit: Telling | undefined;
  /** The score in which the upper is worse by most, where that shows. */
  readonly though: Share | undefined;
  /** The difference by scores: `2.3 points ahead of number 2: contrast +2.7, though …`. */
  readonly difference: string;
  /** The same with the finding that tells most. */
  readonly sentence: string;
}

/** Points that show in one decimal. */
const shows = 0.05;
/** Scores named for and against; more would not be read. */
const mostNamed = 2;

/** Why `upper` stands above `lower`. */
export function whyAbove(build: Build, upper: RankedRow, lower: RankedRow): Why {
  const shares = sharesOf(upper.sheet, lower.sheet, build.weights);
  const apart = upper.sheet.overall - lower.sheet.overall;
  const isLevel = Math.abs(apart) < levelWithin;
  const worst = shares.at(-1);
  const gained = new Set(shares.flatMap((share) => (share.points >= shows ? [share.score] : [])));
  const fault = faultOf(upper.sheet, lower.sheet, build.weights, gained, shows);
  const merit = fault === undefined ? meritOf(upper.sheet, lower.sheet, gained) : undefined;
  const difference = isLevel
    ? levelInWords(build, upper, lower, shares)
    : apartInWords(upper, lower, apart, shares);
  const quoted = isLevel || apart < 0 ? '' : quotedFrom(upper, lower, fault, merit);
  return {
    points: apart,
    isLevel,
    shares,
    fault,
    merit,
    though: worst !== undefined && worst.points <= -shows ? worst : undefined,
    difference,
    sentence: `${difference}${quoted}`,
  };
}

/** `2.3 points ahead of number 2: contrast +2.7, though one bottle more −0.4.` */
function apartInWords(
  upper: RankedRow,
  lower: RankedRow,
  apart: number,
  shares: readonly Share[],
): string {
  const isAhead = apart > 0;
  const { gains, losses } = named(upper, lower, shares);
  const [first, second] = isAhead ? [gains, losses] : [losses, gains];
  const reasons = [first, second === '' ? '' : `though ${second}`].filter((one) => one !== '');
  const by = `${capital(points(apart))} ${isAhead ? 'ahead of' : 'behind'} number ${lower.sheet.letter}`;
  return reasons.length === 0 ? `${by}.` : `${by}: ${reasons.join(', ')}.`;
}

/** `Level with number 2: contrast +1.2 against sheen pairing −1.2. Number 2 has Badges in Oyster.` */
function levelInWords(
  build: Build,
  upper: RankedRow,
  lower: RankedRow,
  shares: readonly Share[],
): string {
  const other = `number ${lower.sheet.letter}`;
  const { gains, losses } = named(upper, lower, shares);
  const wears = `${capital(other)} has ${differenceInWords(build, upper, lower)}.`;
  if (gains !== '' && losses !== '') {
    return `Level with ${other}: ${gains} against ${losses}. ${wears}`;
  }
  const isSame = scoreKeys.every(
    (key) => Math.abs(upper.sheet.scores[key] - lower.sheet.scores[key]) < shows,
  );
  return `Level with ${other}${isSame ? ' on every score' : ''}. ${wears}`;
}

function quotedFrom(
  upper: RankedRow,
  lower: RankedRow,
  fault: Fault | undefined,
  merit: Telling | undefined,
): string {
  if (fault !== undefined) {
    return ` At number ${lower.sheet.letter}${fault.isLess ? ', more so' : ''}: ${fault.sentence}`;
  }
  return merit === undefined ? '' : ` At number ${upper.sheet.letter}: ${merit.sentence}`;
}

/** The scores that speak for the upper row and against it, those of most points first. */
function named(upper: RankedRow, lower: RankedRow, shares: readonly Share[]) {
  const told = ({ score, points: by }: Share): string => {
    const what =
      score === 'readiness'
        ? readinessInWords(upper.sheet, lower.sheet)
        : scoreNames[score].toLowerCase();
    return `${what} ${signed(by)}`;
  };
  const few = (all: readonly Share[]): string =>
    `${all.length > mostNamed ? 'mostly ' : ''}${all.slice(0, mostNamed).map(told).join(', ')}`;
  return {
    gains: few(shares.filter((share) => share.points >= shows)),
    losses: few(shares.filter((share) => share.points <= -shows).toReversed()),
  };
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
