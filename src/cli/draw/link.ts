/**
 * A link in words: what it asks, how long it is, and where it is long, what costs most, what viewers
 * would lose without it, and how to leave it out.
 */
import type { Build } from '../../build/build.ts';
import type { Cost } from '../../opinion/link/cost.ts';
import { longestComfortable, roundPage } from '../../opinion/link/link.ts';
import { lettersIn, mostAsked, type Round, roundOf } from '../../opinion/round.ts';
import { listed, spoken } from '../../opinion/spoken.ts';
import { harmless, type Screen } from './screen.ts';
import { hanging } from './table.ts';

/** A link that was made. */
export interface Linked {
  readonly build: Build;
  readonly round: Round;
  /** The whole address; absent where only the link itself was asked for. */
  readonly address: string | undefined;
  /** Of the address, else of the link. */
  readonly characters: number;
  /** The costliest first. */
  readonly costs: readonly Cost[];
  /** The story was asked for, and there is none. */
  readonly isStoryMissing: boolean;
}

const counted = (count: number): string => count.toLocaleString('en-GB');

/** What to type so that it is left out. */
export function flagFor({ kind, asking }: Cost, build: Build): string {
  switch (kind) {
    case 'story':
      return 'leave --story out';
    case 'spectra':
      return 'add --no-spectra';
    case 'finish names':
      return 'add --no-finish-names';
    case 'alternative':
      return `ask with --letters ${lettersIn(roundOf(build, asking)).join(',')}`;
  }
}

/** Costs told; the rest is in the JSON. */
const mostCosts = 6;
/** A share of the link too small to be worth leaving anything out for. Our judgement. */
const leastShare = 0.01;
const indent = 10;

/** Everything there is to say of it, as lines. */
export function linkLines(screen: Screen, linked: Linked): string[] {
  const { build, round, address, characters, costs } = linked;
  const say = (text: string): string[] => hanging(screen, '', 0, harmless(text));
  const isLong = characters > longestComfortable;
  const most = costs
    .filter((cost) => cost.characters >= leastShare * characters)
    .slice(0, mostCosts);
  return [
    ...say(asksWords(round)),
    ...(linked.isStoryMissing ? say('This build has no story to go along.') : []),
    ...leftOutWords(build).flatMap(say),
    ...say(lengthWords(characters)),
    ...(address === undefined
      ? say(
          `It is what stands behind “#”: put the address of the page’s folder and “${roundPage}#” ` +
            'before it, or give that address as --base.',
        )
      : []),
    ...(isLong && most.length > 0
      ? [
          '',
          ...say('What costs most, in characters, each left out alone:'),
          ...most.flatMap((cost) => costLines(screen, cost, build)),
          ...(costs.length > most.length
            ? say(`${costs.length - most.length} more would save less; --json lists them all.`)
            : []),
        ]
      : []),
  ];
}

function asksWords(round: Round): string {
  const asks = round.asks.map((id) =>
    spoken(round.build.parts.find((part) => part.id === id)?.name ?? '', id),
  );
  const besides = asks.length === 0 ? '' : `, and one by one ${listed(asks, 'and')}`;
  return `It asks about ${round.build.name}: ${listed(lettersIn(round), 'or')}${besides}.`;
}

function leftOutWords({ alternatives }: Build): string[] {
  const count = alternatives.length - mostAsked;
  const [what, are] = count === 1 ? ['alternative', 'is'] : ['alternatives', 'are'];
  return count > 0
    ? [
        `The last ${counted(count)} ${what} ${are} left out: a link asks about ${mostAsked} at most.`,
      ]
    : [];
}

function lengthWords(characters: number): string {
  const count = `${counted(characters)} characters`;
  return characters <= longestComfortable
    ? `${count}, fits anywhere we know of.`
    : `${count}. Over ${counted(longestComfortable)}, comments and chats may cut it or hold it back.`;
}

function costLines(screen: Screen, cost: Cost, build: Build): string[] {
  const title = counted(cost.characters).padStart(indent - 3);
  const text = `${cost.what}. Without it viewers lose ${cost.loses}. To drop it, ${flagFor(cost, build)}.`;
  return hanging(screen, title, indent, harmless(text));
}
