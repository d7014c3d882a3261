/**
 * What is a thing called inside a file? Ids are made from the names builders give: lower-case
 * letters, digits and single hyphens, 60 at most, and never one that is taken. Names have 120
 * characters (UTF-16 units) at most; one that is too long is cut between characters as a reader
 * sees them, never inside one.
 */
const longest = 60;

/** A name as an id: `Harbour roadster!` gives `harbour-roadster`; without Latin letters, `fallback`. */
export function idFrom(name: string, fallback = 'unnamed'): string {
  // Accents fall away as marks of their own: `Café` gives `cafe`.
  const start = name.slice(0, 400);
  const isPlain = /^[ -~]*$/.test(start);
  const plain = (isPlain ? start : start.normalize('NFKD').replace(/\p{M}/gu, '')).toLowerCase();
  const words = plain.match(/[a-z0-9]+/g) ?? [fallback];
  return words.join('-').slice(0, longest).replace(/-$/, '');
}

/** Names that every object has a field for, so that no object can be looked up by them. */
const reserved = ['constructor', 'prototype'];

/** An id made from a name that is not among those taken: `marigold`, `marigold-2`, … */
export const freeId = (name: string, taken: Iterable<string>, fallback?: string): string =>
  idGiver(taken)(name, fallback);

/** Gives each name an id that is neither among those taken nor was given before. */
export function idGiver(taken: Iterable<string>): (name: string, fallback?: string) => string {
  const used = new Set([...taken, ...reserved]);
  // Where many share one name, counting goes on from the last that was given.
  const counts = new Map<string, number>();
  return (name, fallback = 'unnamed') => {
    const base = idFrom(name, fallback);
    let id = base;
    for (let count = counts.get(base) ?? 2; used.has(id); count++) {
      const ending = `-${count}`;
      id = `${base.slice(0, longest - ending.length).replace(/-$/, '')}${ending}`;
      counts.set(base, count + 1);
    }
    used.add(id);
    return id;
  };
}

/** Longest name, UTF-16 units, as files have it. */
export const longestName = 120;

/**
 * Text that fits, by default a name: the longest beginning of whole characters as a reader sees them (an emoji with
 * all its joints, a letter with its marks), `most` UTF-16 units at most; where not even the first
 * of them fits, of whole code points.
 */
export function cutText(text: string, most = longestName): string {
  if (text.length <= most) return text;
  // What stands further back has no say in where these characters end.
  const seen = text.slice(0, most + 2);
  return upTo(charactersOf(seen), most) || upTo(seen, most);
}

let segmenter: Intl.Segmenter | undefined;

function charactersOf(text: string): Iterable<string> {
  // Browsers before 2024 may lack it.
  if (typeof Intl.Segmenter !== 'function') return text;
  segmenter ??= new Intl.Segmenter(undefined, { granularity: 'grapheme' });
  return Array.from(segmenter.segment(text), ({ segment }) => segment);
}

function upTo(pieces: Iterable<string>, most: number): string {
  let text = '';
  for (const piece of pieces) {
    if (text.length + piece.length > most) break;
    text += piece;
  }
  return text;
}

/** A name that is not among those taken: `Copy of Copper`, `Copy of Copper 2`, …; one that fits. */
export function freeName(name: string, taken: Iterable<string>): string {
  const used = new Set(taken);
  const base = cutText(name);
  if (!used.has(base)) return base;
  for (let count = 2; ; count++) {
    const ending = ` ${count}`;
    const free = `${cutText(base, longestName - ending.length)}${ending}`;
    if (!used.has(free)) return free;
  }
}
