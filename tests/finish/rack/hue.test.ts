/**
 * Colour words against the names that a standard of naming gives to colours: Kelly & Judd (1976),
 * the ISCC-NBS blocks and their centroids (`iscc_nbs_centroids`). Its last word is the hue: a
 * moderate reddish brown is a brown. Beside it the racks of the house, by common sense (no source):
 * what anyone expects of the name of an everyday thing.
 */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { find, indexOf } from '../../../src/finish/rack/find.ts';
import { colourWords, colourWordsOf } from '../../../src/finish/rack/hue.ts';
import { parseRack } from '../../../src/finish/rack/rack.ts';
import { rowsOf } from '../../published/table.ts';
import { finishWith, type Written } from '../sample.ts';

// The code listed for this one is as orange as a vivid orange, hue 52°; the block is a pink.
const astray = 'deep yellowish pink';
const blocks = rowsOf('iscc_nbs_centroids').flatMap(({ name, srgb }) =>
  name === astray ? [] : [{ name: name!, words: wordsOf({ colour: { srgb: `#${srgb}` } }) }],
);
const hues = 'red orange brown yellow green blue purple violet pink white gray black olive'.split(
  ' ',
);
function wordsOf(changes: Written): string[] {
  return colourWordsOf(finishWith(changes));
}

describe('a colour that a standard has a name for', () => {
  it('is found by the word that the name ends with, all 266 of them', () => {
    const amiss = blocks.filter(({ name, words }) => !words.includes(name.split(' ').at(-1)!));
    expect(blocks).toHaveLength(266);
    expect(amiss).toEqual([]);
  });

  it('is found by no word that its name and its neighbours round the circle know nothing of', () => {
    // Around the circle, each word and what lies beside it; brown and olive are dark orange and
    // yellow; red, yellow and blue darken and pale into what is called black, grey, brown or pink.
    const beside: Readonly<Record<string, string>> = {
      red: 'pink brown orange purpl',
      orange: 'red brown yellow pink',
      brown: 'orange olive red yellow black pink gray',
      yellow: 'orange olive green white brown',
      green: 'yellow olive blu',
      blue: 'green violet purpl',
      purple: 'violet blu red pink',
      violet: 'purpl blu red pink',
      pink: 'red purpl brown white',
      white: 'pink',
      gray: 'green blu brown olive purpl red yellow',
      black: 'gray red green brown olive purpl blu',
      olive: 'yellow green brown',
    };
    for (const { name, words } of blocks) {
      for (const word of hues.filter((hue) => words.includes(hue))) {
        const stems = [word.slice(0, 4), ...beside[word]!.split(' ')];
        expect([name, word, stems.some((stem) => name.includes(stem))]).toEqual([name, word, true]);
      }
    }
  });

  it('is dark or light where the name says so', () => {
    const has = (word: string) => (one: (typeof blocks)[number]) => one.words.includes(word);
    const called = (say: RegExp) => blocks.filter(({ name }) => say.test(name));
    expect(called(/^very dark|^very deep|^blackish/).every(has('dark'))).toBe(true);
    expect(called(/^very light|^very pale|white$/).every(has('light'))).toBe(true);
    expect(called(/^very light|^very pale|^light|^pale/).some(has('dark'))).toBe(false);
    expect(called(/^dark|^deep|^very d|^blackish/).filter(has('light'))).toEqual([]);
  });
});

describe('a colour of the trade', () => {
  it('glitters, or is metal, where it is called by a metal', () => {
    const brass: Written = { colour: { lab: [71, 5, 38], light: 'D65' } };
    const steel: Written = { colour: { lab: [70, 0, 1], light: 'D65' } };
    expect(wordsOf({ ...brass, effect: 'bare-metal' })).toContain('gold');
    expect(wordsOf({ ...brass, effect: 'metallic' })).toContain('brass');
    expect(wordsOf({ ...brass, effect: 'solid' })).not.toContain('gold');
    expect(wordsOf({ ...steel, effect: 'metallic' })).toContain('silver');
    expect(wordsOf({ ...steel, effect: 'solid' })).not.toContain('silver');
  });

  it('is no white where it can be looked through, nor where it is a metal', () => {
    for (const effect of ['clear', 'lens', 'foil'] as const) {
      expect(wordsOf({ effect, colour: { srgb: '#ffffff' } })).not.toContain('white');
    }
    expect(wordsOf({ colour: { srgb: '#ffffff' } })).toContain('white');
  });

  it('is told once, and in small letters as searches are', () => {
    expect(new Set(colourWords).size).toBe(colourWords.length);
    expect(colourWords.join('')).toMatch(/^[a-z]+$/);
  });
});

describe('a search of the racks by a colour word', () => {
  const shelved = ['bench-drawer', 'corner-shop'].flatMap((id) => {
    const text = readFileSync(new URL(`../../../palettes/${id}.json`, import.meta.url), 'utf8');
    return parseRack(text, id).finishes.map((finish) => ({ rack: id, ...finish }));
  });
  const found = (words: string): string[] =>
    find(indexOf(shelved), { words }).map((at) => shelved[at]!.name);

  // Common sense, no source.
  it.each([
    ['red', ['Rowan red', 'Cherry syrup', 'Field poppy', 'Tomato ribbon', 'Ruby lens']],
    ['orange', ['Tangerine', 'Amber lens', 'Ember']],
    ['brown', ['Toffee', 'Cocoa', 'Saddle tan', 'Rust flock']],
    ['yellow', ['Lemon peel', 'Mustard seed', 'Custard']],
    ['green', ['Pond green', 'Spearmint', 'Forest flock', 'Moss glint', 'Lime ribbon']],
    ['blue', ['Night ferry blue', 'Kingfisher', 'Cobalt hide', 'Navy ribbon']],
    ['turquoise', ['Dragonfly', 'Duck egg']],
    ['teal', ['Deep petrol']],
    ['purple', ['Plum skin', 'Violet ribbon', 'Blackcurrant']],
    ['violet', ['Violet ribbon', 'Lilac mist']],
    ['pink', ['Raspberry fool']],
    ['white', ['Chapel white', 'Oyster']],
    ['grey', ['Harbour grey', 'Pencil lead', 'Dust sheet']],
    ['gray', ['Harbour grey']],
    ['black', ['Ink black', 'Old piano', 'Stove black', 'Coal ribbon']],
    ['cream', ['Cream flock', 'Custard', 'Parchment hide']],
    ['beige', ['Oat ribbon']],
    ['mint', ['Spearmint']],
    ['silver', ['Wheel silver', 'Tin lid', 'Turned aluminium']],
    ['gold', ['Gold foil', 'Brass rod']],
    ['copper', ['Copper pan', 'Copper wire']],
    ['bronze', ['Bronze leaf']],
    ['dark green', ['Forest flock']],
    ['blue hide', ['Cobalt hide']],
  ])('%s finds %j', (words, names) => {
    expect(found(words)).toEqual(expect.arrayContaining(names));
  });

  it.each([
    ['red', ['Pond green', 'Duck egg', 'Custard', 'Chapel white']],
    ['green', ['Rowan red', 'Lilac mist', 'Toffee']],
    ['blue', ['Barley sugar', 'Cocoa', 'Tin lid']],
    ['white', ['Clear lens', 'Kitchen foil']],
    ['gold', ['Lemon peel', 'Wheel silver']],
    ['dark green', ['Spearmint']],
  ])('%s does not find %j', (words, names) => {
    for (const name of names) expect(found(words)).not.toContain(name);
  });

  it('ranks what is called so first, then what has the colour, then what only mentions it', () => {
    const shelf = [
      finishWith({ id: 'a', name: 'Overcoat', note: 'over red primer' }),
      finishWith({ id: 'b', name: 'Poppy', colour: { srgb: '#be0032' } }),
      finishWith({ id: 'c', name: 'Red herring', colour: { srgb: '#a1caf1' } }),
    ].map((finish) => ({ rack: 'shelf', ...finish }));
    const names = find(indexOf(shelf), { words: 'red' }).map((at) => shelf[at]!.name);
    expect(names).toEqual(['Red herring', 'Poppy', 'Overcoat']);
  });
});
