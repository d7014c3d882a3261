/**
 * Replies on a terminal: the count of each letter, of each part that was asked about, every answer
 * in words with its line, and what is not counted and why.
 */
import type { Answer } from '../../opinion/answer.ts';
import { problemOf } from '../../opinion/reply/fault.ts';
import { type Found, isCounted, type SetAside } from '../../opinion/reply/read.ts';
import { lettersIn, type Round } from '../../opinion/round.ts';
import { listed, spoken } from '../../opinion/spoken.ts';
import { harmless, type Screen, styled } from './screen.ts';
import { hanging } from './table.ts';

/** How often each letter was chosen. */
type Counts = Readonly<Record<string, number>>;

/** How many replies count, and how often each letter was chosen, over all and for each part. */
interface Counted {
  readonly counted: number;
  readonly counts: Counts;
  /** By part id, in the order asked; a part that a viewer left out is not counted for them. */
  readonly parts: Readonly<Record<string, Counts>>;
}

/** Counts of all that counts. */
export function countsOf(round: Round, found: readonly Found[]): Counted {
  const answers = found.filter(isCounted).map(({ answer }) => answer);
  const countOf = (chosen: readonly (string | undefined)[]): Counts =>
    Object.fromEntries(
      lettersIn(round).map((letter) => [letter, chosen.filter((one) => one === letter).length]),
    );
  return {
    counted: answers.length,
    counts: countOf(answers.map(({ letter }) => letter)),
    parts: Object.fromEntries(
      round.asks.map((id) => [id, countOf(answers.map(({ parts }) => parts[id]))]),
    ),
  };
}

const mostBar = 40;

/** Everything found, as lines. */
export function repliesLines(screen: Screen, round: Round, found: readonly Found[]): string[] {
  const { counted, counts, parts } = countsOf(round, found);
  const aside = found.filter((one): one is SetAside => !isCounted(one));
  const longest = Math.max(1, ...Object.values(counts));
  const unit = Math.min(1, mostBar / longest);
  const count = counted === 1 ? 'one reply counts' : `${counted} replies count`;
  const rest = aside.length === 0 ? '' : `, ${aside.length} not`;
  const line = (title: string, text: string): string[] =>
    hanging(screen, title, indent, harmless(text));
  return [
    ...hanging(screen, '', 0, styled(screen, 'bold', harmless(round.build.name))),
    ...hanging(screen, '', 0, `${listed(lettersIn(round), 'or')}: ${count}${rest}.`),
    '',
    ...Object.entries(counts).map(([letter, times]) =>
      `  ${letter}  ${String(times).padStart(4)}  ${'█'.repeat(Math.round(times * unit))}`.trimEnd(),
    ),
    ...headed(
      'Part by part',
      Object.entries(parts).flatMap(([id, chosen]) =>
        hanging(screen, '  ', 2, harmless(`${nameOf(round, id)}: ${wordsOfCounts(chosen)}`)),
      ),
    ),
    ...headed(
      'Answers',
      found
        .filter(isCounted)
        .flatMap((one) =>
          line(`  line ${one.line}`, answerInWords(round, one.answer) + behind(one)),
        ),
    ),
    ...headed(
      'Not counted',
      aside.flatMap((one) => {
        const { place, found: seen, expected, mend } = problemOf(one, round);
        const said = one.words === '' ? '' : ` Words: “${one.words}”`;
        return line(
          `  ${place}`,
          `${one.fault}: found ${seen}; expected ${expected}. ${mend}${said}`,
        );
      }),
    ),
  ];
}

const indent = 14;

const headed = (title: string, lines: readonly string[]): string[] =>
  lines.length === 0 ? [] : ['', title, ...lines];

const behind = ({ after }: Found): string => (after === '' ? '' : ` Behind the code: “${after}”`);

const nameOf = ({ build }: Round, id: string): string =>
  spoken(build.parts.find((part) => part.id === id)?.name ?? '', id);

const wordsOfCounts = (counts: Counts): string =>
  Object.entries(counts)
    .map(([letter, times]) => `${letter} ${times}`)
    .join(', ');

function answerInWords(round: Round, { letter, parts, pairs, words }: Answer): string {
  const chosen = round.asks.flatMap((id) =>
    parts[id] === undefined ? [] : [`${nameOf(round, id)} as ${parts[id]}`],
  );
  const put = pairs.map(({ chosen: one, over }) => `${one} over ${over}`);
  const said = words === '' ? '' : ` “${words}”`;
  return `${[letter, ...chosen, ...put].join(', ')}.${said}`;
}
