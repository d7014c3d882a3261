/**
 * What does a builder put where the viewers are? Ready texts for the description of a video, a
 * comment, and a forum or chat: the question first, what the letters stand for in plain words, how
 * to answer without the link, and the link last, since links are held back or cut off.
 *
 * In: a round, its address, the builder's own question. Out: text, and how much of each place it
 * takes. Limits counted: 150 characters (code points) are seen before "more"; a comment takes 2,000
 * characters (UTF-16 units, as pages count them); a description takes 5,000 bytes of UTF-8. All
 * three are common practice, no source; places differ and change.
 */
import { assignmentOf, type Build, finishesByRef } from '../build/build.ts';
import { cutText } from '../ground/id.ts';
import { wordsFrom } from './reply/words.ts';
import { differingParts, lettersIn, type Round } from './round.ts';
import { listed, spoken } from './spoken.ts';

/** Where a text goes. */
export type PostKind = 'description' | 'comment' | 'chat';

/** How a place counts. */
export type PostUnit = 'characters' | 'UTF-16 units' | 'bytes of UTF-8';

/** A limit of a place and how a text stands to it. */
export interface Fill {
  /** What is limited, as the page says it. */
  readonly of: 'what is seen at once' | 'a comment' | 'a description';
  readonly unit: PostUnit;
  readonly most: number;
  readonly count: number;
  /** How many units too many; 0 where it fits. */
  readonly over: number;
}

/** A text ready to paste. */
export interface Post {
  readonly kind: PostKind;
  readonly text: string;
  /** The first line against what is seen at once, and the whole against what the place takes. */
  readonly fills: readonly Fill[];
}

/** What the builder says of it. */
export interface Posting {
  /** Whole address of the round. */
  readonly address: string;
  /** The question in the builder's words; a plain one where absent or empty. */
  readonly question?: string;
}

/** Code points seen before a place folds a text away; common practice, no source. */
export const mostSeen = 150;
/** UTF-16 units in a comment; common practice, no source. */
export const mostInComment = 2000;
/** Bytes of UTF-8 in a description; common practice, no source. */
export const mostInDescription = 5000;
/** Parts told for each letter in a short text; the rest is counted. Our judgement. */
const mostPartsInShort = 4;
/** Names are cut to this, UTF-16 units. Our judgement. */
const longestInPost = 60;

/** Characters as people count most of them: code points. */
export const codePointsIn = (text: string): number => [...text].length;

/** Bytes of a text's UTF-8. */
export const bytesIn = (text: string): number => new TextEncoder().encode(text).length;

/** The text for one kind of place. */
export function postFor(kind: PostKind, round: Round, posting: Posting): Post {
  const text = [
    questionLine(round, posting.question),
    '',
    ...letterLines(round, kind === 'description' ? Infinity : mostPartsInShort),
    ...askedLine(round),
    '',
    howToAnswer(round),
    ...(kind === 'description'
      ? ['Replies are read by a program, so please leave the code in square brackets as it is.']
      : []),
    '',
    `See the car in each: ${posting.address}`,
  ].join('\n');
  return { kind, text, fills: fillsOf(kind, text) };
}

/** How a text stands to the limits of its place. */
export function fillsOf(kind: PostKind, text: string): readonly Fill[] {
  const seen = text.split('\n', 1)[0] ?? '';
  return [
    fill('what is seen at once', 'characters', mostSeen, codePointsIn(seen)),
    kind === 'description'
      ? fill('a description', 'bytes of UTF-8', mostInDescription, bytesIn(text))
      : fill('a comment', 'UTF-16 units', mostInComment, text.length),
  ];
}

const fill = (of: Fill['of'], unit: PostUnit, most: number, count: number): Fill => ({
  of,
  unit,
  most,
  count,
  over: Math.max(0, count - most),
});

/** What must be seen at once: the build, what is asked, and the letters; the first two give way. */
function questionLine(round: Round, asked: string | undefined): string {
  const title = wordsFrom(round.build.name);
  const question = wordsFrom(asked ?? '') || 'Which finish would you choose?';
  const named = question.includes(title) ? question : `${title}: ${question}`;
  const lines = [`${named} ${orOf(round)}?`, `${question} ${orOf(round)}?`, named];
  return lines.find((line) => codePointsIn(line) <= mostSeen) ?? question;
}

/** Letters as they are offered: `A, B or C`; many as `A to H`. */
function orOf(round: Round): string {
  const letters = lettersIn(round);
  return letters.length > 6 ? `${letters[0]} to ${letters.at(-1)}` : listed(letters, 'or');
}

/** `A: stripes Oyster, mirrors Dragonfly`, for each letter. */
function letterLines({ build }: Round, most: number): string[] {
  const parts = differingParts(build);
  return build.alternatives.map((alternative) => {
    const worn = wornBy(build, alternative);
    // One part more takes no more room than saying that there is one.
    const shown = parts.length === most + 1 ? parts : parts.slice(0, most);
    const told = shown.map((id) => `${partName(build, id)} in ${worn(id)}`);
    const more = parts.length - told.length;
    const rest = more > 0 ? ` and ${more} more parts` : '';
    return `${alternative.name}: ${told.join(', ') || 'as the others'}${rest}`;
  });
}

/** The parts that are asked about besides. */
function askedLine(round: Round): string[] {
  const asked = round.asks.map((id) => partName(round.build, id));
  return asked.length === 0 ? [] : ['', `Also asked one by one: ${listed(asked, 'and')}.`];
}

function howToAnswer(round: Round): string {
  const [part] = round.asks;
  const [first = 'A', second = 'B'] = lettersIn(round);
  const mixed =
    part === undefined
      ? ''
      : `, or mix them, such as “${second}, ${partName(round.build, part)} as ${first}”`;
  return `Write ${orOf(round)}${mixed}. Or choose on the page and paste the reply it makes.`;
}

function wornBy(build: Build, alternative: Build['alternatives'][number]) {
  const assignment = assignmentOf(build, alternative);
  const known = finishesByRef(build);
  return (id: string): string => {
    const finish = known.get(assignment.get(id) ?? '');
    return cutText(wordsFrom(finish?.name ?? '') || 'unnamed', longestInPost);
  };
}

function partName({ parts }: Build, id: string): string {
  const name = parts.find((part) => part.id === id)?.name ?? '';
  return cutText(spoken(name, id), longestInPost);
}
