/** An example of a rule names parts that this model has. Derived: each by hand. */
import { expect, it } from 'vitest';
import { exampleOf } from '../../../src/app/rules/standing.ts';
import { setAbsent } from '../../../src/build/edit/part.ts';
import { sketched } from '../../build/sample.ts';

it('speaks of two open parts, else of parts that often wear the same, else of none', () => {
  const open = sketched({ parts: { piping: ['red', 'teal'], dash: ['red', 'teal'], body: 'red' } });
  expect(exampleOf(open)).toBe('Dash like Piping');
  const settled = sketched({ parts: { mirrors: 'red', badges: 'red', body: 'red' } });
  expect(exampleOf(settled)).toBe('Badges like Mirrors');
  expect(exampleOf(setAbsent(settled, 'mirrors', true))).toBe('two parts in one colour');
});
