/**
 * A round on a terminal, as somebody without the page would want to know it: what it is, what each
 * letter wears that another does not, what is the same on all, and what is asked besides.
 */
import { assignmentOf, finishesByRef, type Part } from '../../build/build.ts';
import { markOf } from '../../opinion/mark.ts';
import { differingParts, lettersIn, type Round } from '../../opinion/round.ts';
import { listed, spoken } from '../../opinion/spoken.ts';
import { lightNames } from '../argument.ts';
import { harmless, type Screen, styled } from './screen.ts';
import { hanging } from './table.ts';

const indent = 14;

/** What is asked, as lines; `carName` is undefined where the car is none that comes along. */
export function roundLines(screen: Screen, round: Round, carName: string | undefined): string[] {
  const { name, story, car, scale, viewing, parts, alternatives } = round.build;
  const differing = differingParts(round.build);
  const wornOn = wornWords(round);
  const [first] = alternatives;
  const say = (text: string): string[] => hanging(screen, '', 0, harmless(text));
  const line = (title: string, text: string): string[] =>
    text === '' ? [] : hanging(screen, title, indent, harmless(text));
  const told = (shown: readonly Part[], at: typeof first): string =>
    shown.map((part) => `${nameOf(part)} in ${wornOn(part, at)}`).join(', ');
  const differs = parts.filter(({ id }) => differing.includes(id));
  const alike = parts.filter(({ id, absent }) => !absent && !differing.includes(id));
  const asked = parts.filter(({ id }) => round.asks.includes(id));
  const absent = parts.filter((part) => part.absent);
  return [
    ...hanging(screen, '', 0, styled(screen, 'bold', harmless(name))),
    ...say(
      `${carName ?? `A car that this program does not have, “${car}”,`} at 1:${scale}, seen from ${viewing.distanceMm} mm under ${lightNames[viewing.light]}.`,
    ),
    ...(story === undefined ? [] : story.split('\n').flatMap(say)),
    '',
    ...say(`Which would you choose, ${listed(lettersIn(round), 'or')}?`),
    ...alternatives.flatMap((one) => line(`  ${one.name}`, told(differs, one) || 'as the others')),
    '',
    ...line('one by one', listed(asked.map(nameOf), 'and')),
    ...line('on all', told(alike, first)),
    ...line('not on it', listed(absent.map(nameOf), 'and')),
    ...line('mark', `${markOf(round)}, at the beginning of every reply’s code`),
  ];
}

const nameOf = ({ name, id }: Part): string => spoken(name, id);

/** What a part wears on an alternative, and whether it is painted already. */
function wornWords({ build }: Round) {
  const known = finishesByRef(build);
  const assignments = new Map(build.alternatives.map((one) => [one, assignmentOf(build, one)]));
  return (part: Part, alternative: (typeof build.alternatives)[number] | undefined): string => {
    const ref = alternative === undefined ? undefined : assignments.get(alternative)?.get(part.id);
    const isPainted = 'painted' in part && part.painted === true;
    return `${known.get(ref ?? '')?.name ?? 'nothing'}${isPainted ? ' (painted)' : ''}`;
  };
}
