/** Finishes come into a build, change in it and leave it. Derived: each by hand. */
import { describe, expect, it } from 'vitest';
import { type Build, refOf } from '../../../src/build/build.ts';
import { embed, replaceFinish, usedRefs, withoutUnused } from '../../../src/build/edit/finish.ts';
import { buildFrom } from '../../../src/build/read/document.ts';
import { ref, sketched } from '../sample.ts';

const build = sketched({
  finishes: ['red', 'teal', 'sand', 'slate', 'lime'],
  parts: { stripes: ['red', 'teal'], body: 'sand' },
  rules: [
    {
      kind: 'if-then',
      when: { part: 'stripes', finish: ref('red') },
      wants: { part: 'body', oneOf: [ref('slate'), ref('sand')] },
    },
  ],
});
const refsOf = ({ finishes }: Build): string[] => finishes.map(refOf);
const sound = (one: Build): Build => {
  expect(buildFrom(structuredClone(one))).toEqual(one);
  return one;
};

describe('leaving out what is unused', () => {
  it('keeps what a part, an alternative or a rule names', () => {
    expect([...usedRefs(build)].sort()).toEqual(['red', 'sand', 'slate', 'teal'].map(ref));
    expect(refsOf(sound(withoutUnused(build)))).toEqual(['red', 'teal', 'sand', 'slate'].map(ref));
  });
});

describe('taking a finish in', () => {
  const [red] = build.finishes;

  it('does so once', () => {
    const more = sound(embed(build, { ...red!, rack: 'drawer' }));
    expect(refsOf(more).at(-1)).toBe('drawer/red');
    expect(embed(more, { ...red!, rack: 'drawer' })).toBe(more);
  });

  it('tells a shared bottle the same everywhere', () => {
    const bottle = { id: 'teal', name: 'Teal, the new jar', onHand: false, leadDays: 9 };
    const more = sound(embed(build, { ...red!, rack: 'drawer', bottle }));
    const teal = more.finishes.find((finish) => refOf(finish) === ref('teal'));
    expect(teal?.bottle).toEqual(bottle);
  });
});

describe('putting another in the place of one', () => {
  it('lets parts, alternatives and rules follow', () => {
    const other = { ...build.finishes[0]!, rack: 'drawer', id: 'brick' };
    const swapped = sound(replaceFinish(build, ref('red'), other));
    expect(swapped.parts[0]).toMatchObject({ candidates: ['drawer/brick', ref('teal')] });
    expect(swapped.alternatives[0]!.choices).toEqual({ stripes: 'drawer/brick' });
    expect(swapped.rules[0]).toMatchObject({ when: { finish: 'drawer/brick' } });
    expect(refsOf(swapped)).not.toContain(ref('red'));
  });

  it('that is not there changes nothing', () => {
    expect(replaceFinish(build, 'shelf/none', build.finishes[0]!)).toBe(build);
  });
});
