/**
 * A rule half written, while the build changes beneath it: what has gone is a blank again, so that
 * no rule can be added that names what is not there. Worked out by hand on three parts.
 */
import { beforeEach, describe, expect, it } from 'vitest';
import { ruleFrom } from '../../../src/app/rules/draft.ts';
import { changeRule, fillIn, startRule, useRuling } from '../../../src/app/rules/ruling.ts';
import { edit, open, undo, useBench, type Work } from '../../../src/app/store.ts';
import type { Rule } from '../../../src/build/build.ts';
import { joinParts } from '../../../src/build/edit/cover.ts';
import { embed, withoutUnused } from '../../../src/build/edit/finish.ts';
import { giveFinish, setCandidate } from '../../../src/build/edit/part.ts';
import { addRule, replaceRule } from '../../../src/build/edit/rule.ts';
import { buildFrom } from '../../../src/build/read/document.ts';
import { sketched } from '../../build/sample.ts';

const sketch = sketched({
  finishes: ['grey', 'plum', 'sand'],
  parts: { body: ['grey'], stripes: ['grey', 'plum', 'sand'], wheels: ['grey', 'plum'] },
});
const [grey, plum, sand] = sketch.finishes.map(({ rack, id }) => `${rack}/${id}`);
const build = () => useBench.getState().work!.build;
const draft = () => useRuling.getState().draft!;

beforeEach(() => {
  open({ build: sketch, car: {} as Work['car'] });
  startRule();
});

describe('a rule half written', () => {
  it('loses a part that was joined to another', () => {
    fillIn((now) => ({ ...now, parts: ['stripes', 'wheels'] }));
    edit((now) => joinParts(now, ['stripes', 'wheels']));
    expect(draft().parts).toEqual(['stripes', '']);
    expect(ruleFrom(draft())).toEqual({ missing: 'the other part' });
  });

  it('loses a finish that was left out, and keeps what is still there', () => {
    fillIn((now) => ({
      ...now,
      kind: 'if-then',
      parts: ['stripes', 'wheels'],
      finishes: [sand!, ''],
      oneOf: [grey!, plum!],
    }));
    edit((now) => withoutUnused(setCandidate(now, 'stripes', sand!, false)));
    expect(draft()).toMatchObject({ finishes: ['', ''], oneOf: [grey, plum] });
    expect(ruleFrom(draft())).toEqual({ missing: 'the finish of the first part' });
  });

  it('loses a finish that undo took away', () => {
    const teal = { ...build().finishes[0]!, id: 'teal' };
    const ref = `${teal.rack}/teal`;
    edit((now) => giveFinish(embed(now, teal), 'stripes', ref));
    fillIn((now) => ({
      ...now,
      kind: 'never-together',
      parts: ['stripes', 'wheels'],
      finishes: [ref, plum!],
    }));
    undo();
    expect(draft().finishes).toEqual(['', plum]);
  });

  it('stays as it is while something else changes', () => {
    fillIn((now) => ({ ...now, parts: ['stripes', 'wheels'] }));
    const before = draft();
    edit((now) => ({ ...now, name: 'Another' }));
    expect(draft()).toBe(before);
  });

  it('is put away with the rule it would have changed', () => {
    edit((now) => addRule(now, { kind: 'same', parts: ['stripes', 'wheels'] }));
    changeRule(build().rules[0]!);
    undo();
    expect(useRuling.getState().draft).toBeUndefined();
  });
});

describe('a rule that names what is not there', () => {
  const gone: readonly Rule[] = [
    { kind: 'same', parts: ['stripes', 'roof'] },
    { kind: 'must-echo', part: 'roof' },
    { kind: 'most-share', part: 'roof', percent: 4 },
    { kind: 'ready-by', date: '2031-02-30' },
    {
      kind: 'never-together',
      first: { part: 'stripes', finish: plum! },
      second: { part: 'wheels', finish: 'shelf/teal' },
    },
    {
      kind: 'if-then',
      when: { part: 'stripes', finish: plum! },
      wants: { part: 'wheels', oneOf: [plum!, 'shelf/teal'] },
    },
    { kind: 'same', parts: ['stripes'] },
  ];
  it.each(gone)('is neither added nor put in the place of another: $kind', (rule) => {
    const sound = addRule(sketch, { kind: 'most-finishes', count: 3 });
    expect(addRule(sound, rule)).toBe(sound);
    expect(replaceRule(sound, 0, rule)).toBe(sound);
    expect(() => buildFrom({ ...sound, rules: [rule] })).toThrow();
  });
});
