/**
 * Does the command search find what is meant? Expected orders are derived by hand from the rule in
 * the opening comment of `rank.ts`: every word counts, words of the name before other words, whole
 * words before beginnings, then what was used lately, then the order of the list.
 */
import { describe, expect, it } from 'vitest';
import { apart, type Command } from '../../../src/app/commands/command.ts';
import { ranked, wordsOf } from '../../../src/app/commands/rank.ts';

const command = (id: string, name: string, more: Partial<Command> = {}): Command => ({
  id,
  name,
  kind: 'page',
  run() {},
  ...more,
});
const list = [
  command('undo', 'Undo'),
  command('print', 'Print the comparison', { also: 'paper' }),
  command('mirrors-a', 'Mirrors on A: try spoons', { kind: 'spoons', isDeep: true }),
  command('mirrors-b', 'Mirrors on B: try spoons', { kind: 'spoons', isDeep: true }),
  command('badges-a', 'Badges on A: try spoons', { kind: 'spoons', isDeep: true }),
  command('creme', 'Crème: put it on…', { kind: 'finish', isDeep: true }),
];
const found = (sought: string, recent: readonly string[] = []): string[] =>
  ranked(list, sought, recent).commands.map(({ id }) => id);

describe('the command search', () => {
  it('finds by beginnings of words, in any order and whatever the accents', () => {
    expect(found('mir b')).toEqual(['mirrors-b']);
    expect(found('b MIRR')).toEqual(['mirrors-b']);
    expect(found('creme')).toEqual(['creme']);
    expect(found('Crè')).toEqual(['creme']);
    // Beginnings only: nothing is called after the middle of a word.
    expect(found('rrors')).toEqual([]);
  });

  it('puts whole words before beginnings: A is the letter before it is the start of a name', () => {
    // “b” is a whole word of mirrors-b and a beginning of badges-a.
    expect(found('b')).toEqual(['mirrors-b', 'badges-a']);
  });

  it('puts words of the name before other words', () => {
    const both = [
      command('other', 'Something else', { also: 'paper' }),
      command('own', 'Paper and print'),
    ];
    expect(ranked(both, 'paper', []).commands.map(({ id }) => id)).toEqual(['own', 'other']);
  });

  it('puts what was used lately first among equals, newest first', () => {
    expect(found('mirrors')).toEqual(['mirrors-a', 'mirrors-b']);
    expect(found('mirrors', ['mirrors-b'])).toEqual(['mirrors-b', 'mirrors-a']);
    expect(found('mirrors', ['badges-a', 'mirrors-b', 'mirrors-a'])).toEqual([
      'mirrors-b',
      'mirrors-a',
    ]);
  });

  it('without words shows what was used lately, then what is not one of very many', () => {
    expect(found('')).toEqual(['undo', 'print']);
    expect(found('  ', ['mirrors-b', 'print'])).toEqual(['mirrors-b', 'print', 'undo']);
  });

  it('says which words are unknown and goes on without them', () => {
    const { commands, unknown, isWhole } = ranked(list, 'badges zebra', []);
    expect(unknown).toEqual(['zebra']);
    expect(isWhole).toBe(true);
    expect(commands.map(({ id }) => id)).toEqual(['badges-a']);
    expect(ranked(list, 'zebra', [])).toEqual({ commands: [], unknown: ['zebra'], isWhole: true });
  });

  it('where no command has every word shows those that have most of them', () => {
    // “print” and “mirrors” are never together; each alone counts one.
    const { commands, unknown, isWhole } = ranked(list, 'print mirrors', []);
    expect(unknown).toEqual([]);
    expect(isWhole).toBe(false);
    expect(commands.map(({ id }) => id).sort()).toEqual(['mirrors-a', 'mirrors-b', 'print']);
  });

  it('reads names from right to left as it reads others', () => {
    expect(wordsOf(`${apart('مرايا')} on B`)).toEqual(['مرايا', 'on', 'b']);
    expect(apart('Mirrors')).toBe('Mirrors');
  });
});
