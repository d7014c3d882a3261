/**
 * Where is that bottle? Finds finishes among thousands by words, effect, sheen, chemistry and what
 * is on hand, and sorts them by how near they are to a colour (`nearness.ts`).
 *
 * In: finishes with the rack they stand in, and what is wanted of them. Out: their positions in
 * the index, nearest first where a colour is asked for; else those whose names hold every word,
 * then those that hold some in their kind or have the colour (`hue.ts`), then those where some stand
 * only in the note; otherwise in the order they stand in. A word is found at the start of a word;
 * capitals and accents do not matter. Limits: scripts written without blanks are found from the
 * start of each run of letters only; colours are known by their English words.
 */
import { bottlesOf, type Chemistry, type Effect, type Finish } from '../finish.ts';
import { sheenClassOf } from '../sheen.ts';
import { colourWordsOf } from './hue.ts';
import type { Nearness } from './nearness.ts';

/** A finish and the id of the rack it stands in. */
export type Shelved = Finish & { readonly rack: string };

/** On the shelf; something for it to be bought; no bottle was recorded for it. */
export type Stock = 'on hand' | 'to buy' | 'unrecorded';

/** Whether every bottle of a finish is on hand. */
export function stockOf(finish: Finish): Stock {
  const bottles = bottlesOf(finish);
  if (bottles.length === 0) return 'unrecorded';
  return bottles.every(({ onHand }) => onHand) ? 'on hand' : 'to buy';
}

/** Days until the last missing bottle of a finish can be here; 0 where none is missing. */
export const leadDaysOf = (finish: Finish): number =>
  Math.max(0, ...bottlesOf(finish).map(({ onHand, leadDays }) => (onHand ? 0 : leadDays)));

/** What is looked for; a field left out asks for nothing. */
export interface Wanted {
  readonly words?: string;
  readonly effect?: Effect;
  /** Id of a sheen class. */
  readonly sheen?: string;
  readonly chemistry?: Chemistry;
  readonly stock?: Stock;
  /** How near each finish of the index is to a colour; those not known yet are left out. */
  readonly near?: Nearness;
}

/** What a search asks of one finish, worked out once for each finish. */
interface Facts {
  /** Words of the name, with those of kind and colour, and of everything: a blank before each. */
  readonly name: string;
  readonly look: string;
  readonly all: string;
  readonly sheen: string;
  readonly stock: Stock;
}

export interface FinishIndex<Kind extends Shelved = Shelved> {
  readonly finishes: readonly Kind[];
  readonly facts: readonly Facts[];
}

const known = new WeakMap<Finish, Facts>();

/** Makes finishes ready to be searched; cheap for those that were ready before. */
export const indexOf = <Kind extends Shelved>(finishes: readonly Kind[]): FinishIndex<Kind> => ({
  finishes,
  facts: finishes.map(factsOf),
});

function factsOf(finish: Finish): Facts {
  const before = known.get(finish);
  if (before !== undefined) return before;
  const sheen = sheenClassOf(finish.gloss60);
  const { effect, chemistry, note = '' } = finish;
  const kind = [effect, sheen.name, chemistry === 'none' ? '' : chemistry].join(' ');
  const name = spaced(wordsIn(finish.name));
  const seen = [...wordsIn(kind), ...colourWordsOf(finish)];
  const look = name + spaced(seen);
  const others = new Set(wordsIn(note));
  for (const word of seen) others.delete(word);
  const facts: Facts = {
    name,
    look,
    all: look + spaced([...others]),
    sheen: sheen.id,
    stock: stockOf(finish),
  };
  known.set(finish, facts);
  return facts;
}

const spaced = (words: readonly string[]): string => words.map((word) => ` ${word}`).join('');

/** Letters that Unicode does not take apart into a plain letter and its mark. */
const apart: Readonly<Record<string, string>> = {
  ...{ ß: 'ss', æ: 'ae', œ: 'oe', ø: 'o', ł: 'l', đ: 'd', ð: 'd', þ: 'th', ı: 'i' },
};

/** The words of a text, in small letters and without accents: `Émail, mi-mat` gives email, mi, mat. */
export const wordsIn = (text: string): string[] =>
  text
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[ßæœøłđðþı]/g, (letter) => apart[letter] ?? letter)
    .match(/[\p{L}\p{N}]+/gu) ?? [];

/** Positions in the index of the finishes that have everything wanted. */
export function find(index: FinishIndex, wanted: Wanted): number[] {
  const sought = [...new Set(wordsIn(wanted.words ?? ''))].map((word) => ` ${word}`);
  const { near } = wanted;
  if (near !== undefined) {
    return [...near.order].filter(
      (at) => has(index, at, wanted) && holdsAll(index.facts[at]!.all, sought),
    );
  }
  const named: number[] = [];
  const looking: number[] = [];
  const mentioned: number[] = [];
  for (let at = 0; at < index.finishes.length; at++) {
    if (!has(index, at, wanted)) continue;
    const { name, look, all } = index.facts[at]!;
    // Most have not all of it: one look tells.
    if (!holdsAll(all, sought)) continue;
    if (holdsAll(name, sought)) named.push(at);
    else if (holdsAll(look, sought)) looking.push(at);
    else mentioned.push(at);
  }
  return named.concat(looking, mentioned);
}

const holdsAll = (text: string, words: readonly string[]): boolean =>
  words.every((word) => text.includes(word));

function has(index: FinishIndex, at: number, wanted: Wanted): boolean {
  const finish = index.finishes[at]!;
  const facts = index.facts[at]!;
  return (
    (wanted.effect === undefined || finish.effect === wanted.effect) &&
    (wanted.sheen === undefined || facts.sheen === wanted.sheen) &&
    (wanted.chemistry === undefined || finish.chemistry === wanted.chemistry) &&
    (wanted.stock === undefined || facts.stock === wanted.stock)
  );
}

/** What there is to choose between, each with how many finishes have it. */
export interface Kinds {
  readonly effects: ReadonlyMap<Effect, number>;
  /** By id of the sheen class. */
  readonly sheens: ReadonlyMap<string, number>;
  readonly chemistries: ReadonlyMap<Chemistry, number>;
  readonly stocks: ReadonlyMap<Stock, number>;
}

/** The kinds of finish in an index. */
export const kindsIn = (index: FinishIndex): Kinds => ({
  effects: counted(index.finishes.map(({ effect }) => effect)),
  sheens: counted(index.facts.map(({ sheen }) => sheen)),
  chemistries: counted(index.finishes.map(({ chemistry }) => chemistry)),
  stocks: counted(index.facts.map(({ stock }) => stock)),
});

function counted<Key>(keys: readonly Key[]): ReadonlyMap<Key, number> {
  const counts = new Map<Key, number>();
  for (const key of keys) counts.set(key, (counts.get(key) ?? 0) + 1);
  return counts;
}
