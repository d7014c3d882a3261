/** What a spoon pressed for many parts did, in words. Derived: each by hand. */
import { describe, expect, it } from 'vitest';
import { pickedWords } from '../../../src/app/parts/picked.ts';
import { addAlternative } from '../../../src/build/edit/alternative.ts';
import { giveFinish, wearOn } from '../../../src/build/edit/part.ts';
import { ref, sketched } from '../../build/sample.ts';

const before = sketched({
  finishes: ['red', 'teal', 'sand'],
  parts: { piping: ['teal'], dash: ['teal'], body: 'sand', seats: 'sand' },
});
const given = (ids: readonly string[], finish: string, build = before) =>
  ids.reduce((now, id) => giveFinish(now, id, ref(finish)), build);

describe('a spoon pressed for many parts', () => {
  it('is worn by settled ones at once', () => {
    const ids = ['body', 'seats'];
    expect(pickedWords(before, given(ids, 'red'), ids, ref('red'))).toBe(
      'Body and Seats wear Red.',
    );
  });

  it('becomes a candidate of open ones, and it is told what is worn', () => {
    const ids = ['piping', 'dash'];
    expect(pickedWords(before, given(ids, 'red'), ids, ref('red'))).toBe(
      'Red is now a candidate of Piping and Dash; A wears Teal.',
    );
  });

  it('that was one already says so', () => {
    const ids = ['piping', 'dash'];
    expect(pickedWords(before, given(ids, 'teal'), ids, ref('teal'))).toBe(
      'Teal was a candidate already of Piping and Dash; A wears Teal.',
    );
  });

  it('tells both where both are ticked, and alternatives that differ apart', () => {
    const ids = ['piping', 'dash', 'body'];
    const two = wearOn(addAlternative(given(ids, 'red'), 'Second'), 'second', 'dash', ref('red'));
    expect(pickedWords(before, two, ids, ref('red'))).toBe(
      'Body wears Red; Red is now a candidate of Piping and Dash; A wears Teal; B wears several finishes on them.',
    );
  });
});
