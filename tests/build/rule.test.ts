/** Every rule kind, kept and broken, with the sentence a builder reads. Derived: each by hand. */
import { describe, expect, it } from 'vitest';
import { assignmentOf, type Rule } from '../../src/build/build.ts';
import { brokenRules, listed, type RuleFacts } from '../../src/build/rule.ts';
import { ref, sketched } from './sample.ts';

const facts: RuleFacts = {
  echoesElsewhere: (part) => part !== 'piping',
  sharePercent: (part) => (part === 'stripes' ? 11.14 : 2),
  readyDate: () => '2031-05-24',
};

/** Body red and painted; stripes teal, mirrors teal, piping sand; teal and sand are to buy. */
const broken = (...rules: Rule[]) => {
  const build = sketched({
    finishes: ['red', 'teal', 'sand'],
    toBuy: ['teal', 'sand'],
    parts: { body: 'red', stripes: ['teal', 'red'], mirrors: ['teal', 'sand'], piping: ['sand'] },
    painted: ['body'],
    rules,
  });
  return brokenRules(build, assignmentOf(build, build.alternatives[0]!), facts);
};
const wears = (part: string, finish: string) => ({ part, finish: ref(finish) });

const cases: readonly [title: string, kept: Rule, breaks: Rule, parts: string[], why: string][] = [
  [
    'same',
    { kind: 'same', parts: ['stripes', 'mirrors'] },
    { kind: 'same', parts: ['stripes', 'mirrors', 'piping'] },
    ['stripes', 'mirrors', 'piping'],
    'Stripes, Mirrors and Piping must all wear the same, but they differ: Stripes in Teal, Mirrors in Teal and Piping in Sand.',
  ],
  [
    'if-then',
    {
      kind: 'if-then',
      when: wears('stripes', 'red'),
      wants: { part: 'piping', oneOf: [ref('red')] },
    },
    {
      kind: 'if-then',
      when: wears('stripes', 'teal'),
      wants: { part: 'piping', oneOf: [ref('red'), ref('teal')] },
    },
    ['stripes', 'piping'],
    'With Stripes in Teal, Piping must wear Red or Teal, but we have Piping in Sand.',
  ],
  [
    'never-together',
    { kind: 'never-together', first: wears('stripes', 'teal'), second: wears('mirrors', 'sand') },
    { kind: 'never-together', first: wears('stripes', 'teal'), second: wears('mirrors', 'teal') },
    ['stripes', 'mirrors'],
    'Stripes in Teal must not meet Mirrors in Teal, but they do.',
  ],
  [
    'must-echo',
    { kind: 'must-echo', part: 'mirrors' },
    { kind: 'must-echo', part: 'piping' },
    ['piping'],
    'The colour of Piping must show again in another zone, but Sand shows in one zone only.',
  ],
  [
    'most-new-bottles',
    { kind: 'most-new-bottles', count: 2 },
    { kind: 'most-new-bottles', count: 1 },
    ['stripes', 'mirrors', 'piping'],
    'At most 1 bottle may be bought, but 2 are needed: teal bottle and sand bottle.',
  ],
  [
    'most-finishes',
    { kind: 'most-finishes', count: 3 },
    { kind: 'most-finishes', count: 2 },
    ['body', 'stripes', 'mirrors', 'piping'],
    'At most 2 finishes may be used, but there are 3.',
  ],
  [
    'ready-by',
    { kind: 'ready-by', date: '2031-05-24' },
    { kind: 'ready-by', date: '2031-05-23' },
    [],
    'Everything must be dry by 2031-05-23, but 2031-05-24 is the earliest that bottles and cure times allow.',
  ],
  [
    'most-share',
    { kind: 'most-share', part: 'stripes', percent: 11.2 },
    { kind: 'most-share', part: 'stripes', percent: 10 },
    ['stripes'],
    'The colour of Stripes may take at most 10 % of the visible car, but Teal takes 11.1 %.',
  ],
];

describe.each(cases)('the rule %s', (kind, kept, breaks, parts, why) => {
  it('passes where it is kept', () => expect(broken(kept)).toEqual([]));

  it('says which rule broke and why', () => {
    const but = why.slice(why.indexOf(', but ') + ', but '.length, -1);
    expect(broken(kept, breaks)).toEqual([{ index: 1, kind, parts, sentence: why, why: but }]);
  });
});

describe('broken rules', () => {
  it('are all told, in the order of the file', () => {
    const all = broken(...cases.map(([, , breaks]) => breaks));
    expect(all.map(({ index }) => index)).toEqual(cases.map((_, index) => index));
  });

  it('join words as a sentence does', () => {
    expect([listed([]), listed(['a']), listed(['a', 'b']), listed(['a', 'b', 'c'], 'or')]).toEqual([
      'none',
      'a',
      'a and b',
      'a, b or c',
    ]);
  });
});
