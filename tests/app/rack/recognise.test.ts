/**
 * Which pasted texts does the page speak of? Derived: each told apart by eye beforehand, tables of
 * finishes from letters, lists and code that hold as many commas.
 */
import { describe, expect, it } from 'vitest';
import { isTableOfFinishes } from '../../../src/app/rack/files/recognise.ts';
import { csvFromRack } from '../../../src/finish/rack/csv.ts';
import { emptyRack } from '../../../src/finish/rack/edit.ts';
import { finishWith } from '../../finish/sample.ts';

const ours = csvFromRack({ ...emptyRack('shelf', 'Shelf'), finishes: [finishWith({})] });

describe('a table of finishes', () => {
  it.each([
    ['with a column of codes', 'Name;Hex\nTar;#101010'],
    ['of our own', ours],
    ['copied from a spreadsheet, Lab over three columns', 'Paint\tL*\ta*\tb*\nPlum\t30\t20\t-8'],
    ['with red, green and blue', 'Name,R,G,B\nTar,16,16,16'],
    ['whose colours are wrong, which is to be told', 'Paint,Colour,Gloss\nPlum,plum,high'],
    ['without headings', 'Tar,#101010\nBone,#e3dac9\nPlum,#673147'],
    ['with headings in another language', 'Farbe\tWert\nTeer\t#101010\nPflaume\t#673147'],
    ['longer than is looked at', `Name,Hex\n${'Tar,#101010\n'.repeat(9000)}`],
  ])('%s', (_, text) => {
    expect(isTableOfFinishes(text)).toBe(true);
  });
});

describe('anything else', () => {
  it.each([
    ['a letter', 'hello, world, again\nthis is, an e-mail, indeed'],
    [
      'a letter that speaks of paint',
      'We need paint, colour and brushes, soon\nYours, Ann, as ever',
    ],
    ['code', 'const a = [1, 2, 3];\nconst b = f(a, "#fff", x);'],
    ['a list of numbered things', 'Mended, #123, today\nLeft, for later, sadly\nAnd, one, more'],
    ['a table of something else', 'Name\tPrice\tShop\nGlue\t3.20\tCorner'],
    ['one line', 'Name,Hex,Gloss'],
    ['one column', 'Colour\n#101010\n#e3dac9'],
    ['bytes that are no text', '\u0000\u0001,\u0002\n\u0003,\u0004'],
    ['nothing', ''],
  ])('%s', (_, text) => {
    expect(isTableOfFinishes(text)).toBe(false);
  });
});
