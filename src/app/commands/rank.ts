/**
 * Which commands are meant by these words? Those whose words begin with them, in any order. Every
 * word typed counts; where no command has them all, those that have most of them come.
 *
 * In: commands in the order of their list, what was typed, ids used lately, newest first. Out:
 * commands, the likeliest first, and the words that no command has. Without words: what was used
 * lately, then everything that is not one of very many. The order is our judgement: words of the
 * name before other words, whole words before beginnings, then what was used lately.
 */
import type { Command } from './command.ts';

export interface Ranked {
  readonly commands: readonly Command[];
  /** Typed words that nothing here begins with. */
  readonly unknown: readonly string[];
  /** Whether every known word is in each of the commands. */
  readonly isWhole: boolean;
}

/** Costs of one typed word; what a command lacks is counted apart. */
const wholeWord = 0;
const beginning = 1;
const otherWord = 3;

/** Text in lower case, without accents and marks of direction, as its words. */
export const wordsOf = (text: string): string[] =>
  text
    .normalize('NFKD')
    .replace(/[\p{M}\u2066-\u2069\u200e\u200f]/gu, '')
    .toLowerCase()
    .split(/[^\p{L}\p{N}]+/u)
    .filter((word) => word !== '');

interface Words {
  readonly own: readonly string[];
  readonly other: readonly string[];
}

const known = new WeakMap<Command, Words>();

function wordsIn(command: Command): Words {
  const before = known.get(command);
  if (before !== undefined) return before;
  const { name, kind, note = '', also = '' } = command;
  const words = { own: wordsOf(name), other: wordsOf(`${kind} ${note} ${also}`) };
  known.set(command, words);
  return words;
}

/** What a typed word costs here; undefined where no word begins with it. */
function costOf(typed: string, { own, other }: Words): number | undefined {
  if (own.includes(typed)) return wholeWord;
  if (own.some((word) => word.startsWith(typed))) return beginning;
  return other.some((word) => word.startsWith(typed)) ? otherWord : undefined;
}

/** The commands that are meant, the likeliest first. */
export function ranked(
  commands: readonly Command[],
  sought: string,
  recent: readonly string[],
): Ranked {
  const place = new Map(recent.map((id, at) => [id, at]));
  const lateness = ({ id }: Command): number => place.get(id) ?? recent.length;
  const typed = [...new Set(wordsOf(sought))];
  if (typed.length === 0) {
    const shown = commands.filter((command) => !command.isDeep || place.has(command.id));
    const order = [...shown].sort((one, other) => lateness(one) - lateness(other));
    return { commands: order, unknown: [], isWhole: true };
  }
  const met = new Set<string>();
  const found = commands.flatMap((command) => {
    const words = wordsIn(command);
    let cost = 0;
    let count = 0;
    for (const word of typed) {
      const costs = costOf(word, words);
      if (costs === undefined) continue;
      met.add(word);
      count += 1;
      cost += costs;
    }
    return count === 0 ? [] : [{ command, cost, count }];
  });
  const most = Math.max(0, ...found.map(({ count }) => count));
  const order = found
    .filter(({ count }) => count === most)
    .sort((one, other) => one.cost - other.cost || lateness(one.command) - lateness(other.command));
  return {
    commands: order.map(({ command }) => command),
    unknown: typed.filter((word) => !met.has(word)),
    isWhole: most === met.size,
  };
}
