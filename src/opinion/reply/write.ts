/**
 * What does a viewer send back? A line that people can read, with the viewer's own words, and below
 * it the code for the tally (`grammar.ts`).
 *
 * In: a round and an answer to it. Out: text without markup, at most about 1,900 UTF-16 units even
 * where every part of a long build is asked, so that it fits where 2,000 are allowed.
 */
import { InputError, shown } from '../../ground/problem.ts';
import type { Answer } from '../answer.ts';
import { lettersIn, type Round } from '../round.ts';
import { spoken } from '../spoken.ts';
import { type Choice, codeOf } from './grammar.ts';
import { wordsFrom } from './words.ts';

/** Parts are named up to this length, UTF-16 units; the code holds them all. */
const longestOpening = 600;

/** The reply to copy. Throws `InputError` where the answer is none to this round. */
export function replyOf(round: Round, answer: Answer): string {
  refuseOther(round, answer);
  const words = wordsFrom(answer.words);
  const [opening = ''] = openings(round, answer);
  return `${opening}${words === '' ? '' : ` ${words}`}\n${codeOf(round, answer)}`;
}

/** How a reply with this choice begins: as written now, then as older versions wrote it. */
export const openings = (round: Round, choice: Choice): readonly string[] => [forMe(round, choice)];

function forMe({ build, asks }: Round, { letter, parts }: Choice): string {
  let opening = `${letter} for me`;
  let joint = '; ';
  for (const { id, name } of build.parts) {
    const chosen = parts[id];
    if (chosen === undefined || !asks.includes(id)) continue;
    const next = `${joint}${spoken(name, id)} as ${chosen}`;
    if (opening.length + next.length >= longestOpening) break;
    opening += next;
    joint = ', ';
  }
  return `${opening}.`;
}

function refuseOther(round: Round, { letter, parts, pairs }: Answer): void {
  const letters = lettersIn(round);
  const given = [letter, ...Object.values(parts), ...pairs.flatMap((pair) => Object.values(pair))];
  const wrong = given.find((one) => !letters.includes(one));
  const stranger = Object.keys(parts).find((id) => !round.asks.includes(id));
  const twin = pairs.find(({ chosen, over }) => chosen === over);
  if (wrong === undefined && stranger === undefined && twin === undefined) return;
  throw new InputError([
    {
      place: 'answer',
      found: shown(wrong ?? stranger ?? twin?.chosen),
      expected:
        wrong === undefined && stranger !== undefined
          ? 'a part that the round asks about'
          : `one of the letters ${letters.join(', ')}, and two of them in a pair`,
      mend: 'Answer only what the round asks.',
    },
  ]);
}
