/** Names that show nothing, and names taken from files: characters as the Unicode standard lists them. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { nameFault } from '../../src/app/pieces/naming.ts';
import { emptyRack } from '../../src/finish/rack/edit.ts';
import { parseRack, textOfRack } from '../../src/finish/rack/rack.ts';
import { nameFromFile } from '../../src/finish/text/name.ts';

describe('a name that was typed', () => {
  // Zero-width space and joiners, the blanks of Hangul and Braille, a soft hyphen, a mark alone.
  const blanks = ['', ' ', '\u200b', '\u200b\u200d\u2060', '\u3164', '\u2800', '\u00ad', '\u0301'];
  it.each(blanks)('%j is refused, since nothing of it is seen', (name) => {
    expect(nameFault(name)).toMatch(/letter or figure/);
  });

  it.each(['a', '7', '箱', '\u{1f3ce}', '!', 'ab\u200bc', 'می\u200cخواهم', '–'])(
    '%j passes',
    (name) => {
      expect(nameFault(name)).toBeUndefined();
    },
  );

  it.each(['a\u200f', 'a\tb', 'a\u202eb', 'a\u0000', 'a\ud83c'])(
    '%j is refused for what cannot be seen',
    (name) => expect(nameFault(name)).toMatch(/cannot be seen/),
  );

  it('that passes names a rack that its reader takes (property)', () => {
    const typed = fc.oneof(
      fc.string({ unit: 'grapheme', maxLength: 130 }),
      fc.string({ unit: 'binary', maxLength: 12 }),
      fc.constantFrom('\u200f', 'x\u202a', 'x'.repeat(121), '\u2028', 'a\nb'),
    );
    fc.assert(
      fc.property(typed, (name) => {
        if (nameFault(name) !== undefined) return;
        const rack = emptyRack('shelf', name.trim());
        expect(parseRack(textOfRack(rack), 'shelf')).toEqual(rack);
      }),
      { seed: 87, numRuns: 1000 },
    );
  });
});

describe('a rack named after its file', () => {
  it.each([
    ['My shelf.csv', 'My shelf'],
    ['My\u200f sh\u0007elf.csv', 'My shelf'],
    ['a\tb\n c.json', 'a b c'],
    ['\u202e.csv', 'My rack'],
    ['\u200b.csv', 'My rack'],
    ['half\ud83c.csv', 'half'],
    ['.csv', '.csv'],
    [`a${'\u{1f3ce}'.repeat(80)}.csv`, `a${'\u{1f3ce}'.repeat(59)}`],
  ])('%j is called %j', (file, name) => {
    expect(nameFromFile(file, 'My rack')).toBe(name);
  });

  it('always has a name that its reader takes (property)', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 200 }), (file) => {
        const rack = emptyRack('shelf', nameFromFile(file, 'My rack'));
        expect(parseRack(textOfRack(rack), 'shelf')).toEqual(rack);
        expect(nameFault(rack.name)).toBeUndefined();
      }),
      { seed: 88, numRuns: 1000 },
    );
  });
});
