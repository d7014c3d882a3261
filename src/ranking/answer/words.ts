/**
 * What is said of a ranking, on the page as in the terminal: how many combinations there are, what
 * is proved, what could still be better, what a row takes and how it differs from another.
 *
 * Rankings and rows in; whole sentences out, with parts and finishes by the builder's names.
 */
import type { Build } from '../../build/build.ts';
import { combinationsInWords } from '../../build/choice/combination.ts';
import { namesIn } from '../../build/rule.ts';
import { inWords } from '../../score/finding/scheme.ts';
import type { RankedRow, Ranking, Wanted } from '../ranking.ts';
import { atMostPoints, counted, inNumerals, levelWithin, shownScore } from './figures.ts';

/** What the words depend on beside the ranking. */
export interface Question extends Pick<Wanted, 'count' | 'isDifferent'> {
  readonly build: Pick<Build, 'rules'>;
}

/** Points by which some combination might still beat the first row; 0 once proved. */
export function gapOf({ rows, atMost, isProved }: Ranking): number {
  const best = rows[0]?.sheet.overall ?? 0;
  const gap = Math.max(0, atMost - best);
  return isProved || gap <= levelWithin ? 0 : gap;
}

/** `Three open parts, 27 combinations.` */
export const openSentence = ({ open, combinations }: Ranking): string =>
  open.length === 0
    ? 'Nothing is open: there is nothing to choose.'
    : `${capital(counted(open.length, 'open part'))}, ${combinationsInWords(combinations)}.`;

/** What these rows are: proved, all there are, or the best found so far and by how much at most. */
export function standingSentence(ranking: Ranking, question: Question): string {
  const { rows, isProved } = ranking;
  if (!isProved) return stoppedSentence(ranking);
  const all = combinationsInWords(ranking.combinations);
  const { count, isDifferent } = question;
  const hasRules = question.build.rules.length > 0;
  if (rows.length === 0) return `No combination keeps every rule: proved for ${all}.`;
  if (rows.length < count) return everyRowSentence(ranking, question);
  const best = rows.length === 1 ? 'This is the best' : `These are the best ${rows.length}`;
  const wishes = [
    ...(hasRules ? ['keep every rule'] : []),
    ...(isDifferent && rows.length > 1 ? ['differ plainly from those above them'] : []),
  ];
  const those = rows.length === 1 ? wishes.map(singular) : wishes;
  // Which of them keep the rules is not counted: the number is that of all combinations.
  return those.length === 0
    ? `${best} of ${all}, proved.`
    : `${best} that ${those.join(' and ')}, of ${all}: proved.`;
}

const singular = (wish: string): string => wish.replace(/^keep /, 'keeps ');

/** Nothing more to show than these rows. */
function everyRowSentence({ rows, combinations }: Ranking, question: Question): string {
  const isAlone = rows.length === 1;
  if (question.isDifferent) {
    const others = question.build.rules.length > 0 ? 'other that keeps the rules' : 'other';
    const these = isAlone ? 'this' : `one of these ${inNumerals(rows.length)}`;
    return `Nothing more to show: every ${others} looks much like ${these}, proved.`;
  }
  const all = combinationsInWords(combinations);
  const these = isAlone ? 'this is it' : 'these are all of them, best first';
  return BigInt(rows.length) === combinations
    ? `There ${isAlone ? 'is' : 'are'} only ${all}; ${these}.`
    : `Only ${inNumerals(rows.length)} of ${all} ${isAlone ? 'keeps' : 'keep'} every rule; ${these}, proved.`;
}

/** What is known before a search has ended, or where it was stopped. */
export function stoppedSentence(ranking: Ranking): string {
  const [first] = ranking.rows;
  if (first === undefined) {
    return `None found so far; nothing can reach more than ${atMostScore(ranking.atMost)}.`;
  }
  const gap = gapOf(ranking);
  const overall = shownScore(first.sheet.overall);
  return gap === 0
    ? `The first, ${overall}, is proved the best; what comes after it is the best found so far.`
    : `Best found so far: ${overall}; no combination can beat it by more than ${atMostPoints(gap)}.`;
}

const atMostScore = (atMost: number): string => shownScore(Math.ceil(atMost * 10 - 1e-9) / 10);

/** What must be bought for a row, each bottle with the parts that wait for it. */
export function toBuySentence(build: Build, { toBuy }: Pick<RankedRow, 'toBuy'>): string {
  if (toBuy.length === 0) return 'Nothing to buy.';
  const names = namesIn(build);
  const each = toBuy.map(
    ({ bottle, parts }) => `${bottle.name}, for ${inWords(parts.map(names.part))}`,
  );
  return `To buy: ${each.join('; ')}.`;
}

/** The same in a few words: `nothing to buy`, `two bottles to buy`. */
export const toBuyInShort = ({ toBuy }: Pick<RankedRow, 'toBuy'>): string =>
  toBuy.length === 0 ? 'nothing to buy' : `${counted(toBuy.length, 'bottle')} to buy`;

/** Parts told one by one where two rows differ, before the rest is counted (our judgement). */
const mostPartsTold = 4;

/** Where two rows differ: `Mirrors and Badges in Oyster; Wheels in Tin lid`, as the second wears it. */
export function differenceInWords(
  build: Build,
  above: Pick<RankedRow, 'choices'>,
  row: Pick<RankedRow, 'choices'>,
): string {
  const changed = Object.entries(row.choices).filter(([part, ref]) => above.choices[part] !== ref);
  return wornInWords(build, changed, mostPartsTold);
}

/** What parts wear, those of one finish together, in the order of the build. */
export function wornInWords(
  build: Build,
  worn: readonly (readonly [string, string])[],
  most = Number.POSITIVE_INFINITY,
): string {
  const names = namesIn(build);
  const place = new Map(build.parts.map(({ id }, at) => [id, at]));
  const inOrder = [...worn].sort(
    ([one], [other]) => (place.get(one) ?? 0) - (place.get(other) ?? 0),
  );
  const byFinish = new Map<string, string[]>();
  for (const [part, ref] of inOrder.slice(0, most))
    byFinish.set(ref, [...(byFinish.get(ref) ?? []), names.part(part)]);
  const told = [...byFinish].map(([ref, parts]) => `${inWords(parts)} in ${names.finish(ref)}`);
  const more = inOrder.length - most;
  return [...told, ...(more > 0 ? [`${counted(more, 'more part')} otherwise`] : [])].join('; ');
}

/** How a row differs from the one above it: `As number 1, but Wheels in Tin lid.` */
export const differsSentence = (build: Build, above: RankedRow, row: RankedRow): string =>
  `As number ${above.sheet.letter}, but ${differenceInWords(build, above, row)}.`;

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
