/** What a build file refuses, and how it says so: place, what stands there, what should, the mend. */
import { describe, expect, it } from 'vitest';
import { openBuild, parseBuild, textOf } from '../../src/build/file.ts';
import { buildFrom, type Migrations, mostProblems, raised } from '../../src/build/read/document.ts';
import { InputError, type Problem } from '../../src/ground/problem.ts';
import { plainDocument, plainFinish, ref } from './sample.ts';

type Loose = Record<string, unknown>;
/** A good document with one thing spoiled. */
const spoiled = (change: Loose): Loose => ({
  ...plainDocument(['red', 'teal'], [], { body: 'red', stripes: ['teal', 'red'] }),
  ...change,
});
const problemsOf = (read: () => unknown): readonly Problem[] => {
  try {
    read();
  } catch (error) {
    if (error instanceof InputError) return error.problems;
    throw error;
  }
  throw new Error('it was accepted');
};
/** Problems of a document, as a file. */
const refusals = (change: Loose): readonly Problem[] =>
  problemsOf(() => parseBuild(JSON.stringify(spoiled(change)), 'test.json'));

const openPart = (id: string, candidates: string[], more: Loose = {}) => ({
  id,
  name: id,
  covers: [id],
  candidates,
  ...more,
});
const body = { id: 'body', name: 'Body', covers: ['body'], finish: ref('red') };
const choosing = (choices: Loose) => [{ id: 'first', name: 'First', choices }];

describe('a good build', () => {
  it('opens, defaults filled in', () => {
    const build = parseBuild(JSON.stringify(spoiled({})));
    expect(build.tonal).toBe(false);
    expect(build.finishes[0]!.undercoats).toEqual([]);
  });

  it('keeps markup as the text it is', () => {
    const name = '<img src=x onerror=alert(1)> & “Co”';
    expect(parseBuild(JSON.stringify(spoiled({ name }))).name).toBe(name);
  });
});

const cases: readonly [what: string, change: Loose, place: string, says: RegExp][] = [
  ['another format', { format: 'testspoon-rack' }, 'format', /“testspoon-rack”.*another kind/],
  ['no format', { format: undefined }, 'format', /nothing.*testspoon-build/],
  ['no version', { version: undefined }, 'version', /nothing.*"version": 2/],
  ['a version in words', { version: 'one' }, 'version', /“one”.*whole number/],
  ['a future version', { version: 99 }, 'version', /99.*newer.*left untouched/],
  ['a half version', { version: 1.5 }, 'version', /1.5.*whole number/],
  [
    'a spectrum with a hole in it',
    {
      finishes: [
        {
          ...plainFinish('red'),
          colour: {
            spectrum: {
              nm: [400, 430, 460, 490, 520, 550, 580, 700],
              reflectance: [0.1, 0.1, 0.1, 0.1, 0.1, 0.1, 0.1, 0.6],
            },
          },
        },
        plainFinish('teal'),
      ],
    },
    'finishes › shelf/red › colour › spectrum › nm › 8',
    /gap/,
  ],
  [
    'weights that are all zero',
    {
      weights: { contrast: 0, accent: 0, sheen: 0, harmony: 0, steadiness: 0, readiness: 0 },
    },
    'weights',
    /at least one weight above 0/,
  ],
  ['a scale in words', { scale: '1:24' }, 'scale', /“1:24”.*a number/],
  ['a field nobody knows', { colour: 'red' }, '', /colour|field/],
  ['a day that does not exist', { wantedBy: '2031-02-30' }, 'wantedBy', /“2031-02-30”.*calendar/],
  ['a date in another order', { wantedBy: '24.5.2031' }, 'wantedBy', /a date like/],
  [
    'an unknown finish',
    { parts: [{ ...body, finish: ref('reed') }, openPart('stripes', [ref('teal')])] },
    'parts › body › finish',
    /“shelf\/reed”.*Did you mean “shelf\/red”/,
  ],
  [
    'an unknown candidate',
    { parts: [body, openPart('stripes', [ref('teal'), ref('mauve')])] },
    'parts › stripes › candidates › 2',
    /“shelf\/mauve”.*a finish this build holds/,
  ],
  [
    'a candidate listed twice',
    { parts: [body, openPart('stripes', [ref('teal'), ref('teal')])] },
    'parts › stripes › candidates › 2',
    /as in entry 1/,
  ],
  [
    'two parts of one id',
    { parts: [body, openPart('stripes', [ref('teal')]), { ...body, covers: ['sills'] }] },
    'parts › 3',
    /“body”, as in entry 1.*once only/,
  ],
  [
    'two finishes of one id',
    { finishes: [plainFinish('red'), plainFinish('teal'), plainFinish('red')] },
    'finishes › 3',
    /“shelf\/red”, as in entry 1/,
  ],
  [
    'two alternatives of one id',
    { alternatives: [...choosing({ stripes: ref('teal') }), ...choosing({ stripes: ref('red') })] },
    'alternatives › 2',
    /“first”, as in entry 1/,
  ],
  [
    'a car part covered twice',
    { parts: [body, openPart('stripes', [ref('teal')], { covers: ['stripes', 'body'] })] },
    'parts › stripes › covers › 2',
    /“body”, which “Body” covers already/,
  ],
  [
    'a choice outside the candidates',
    {
      parts: [body, openPart('stripes', [ref('teal')])],
      alternatives: choosing({ stripes: ref('red') }),
    },
    'alternatives › first › choices › stripes',
    /“shelf\/red”.*a candidate of the part/,
  ],
  [
    'a settled part repainted in a finish the build does not hold',
    { alternatives: choosing({ stripes: ref('teal'), body: ref('rde') }) },
    'alternatives › first › choices › body',
    /“shelf\/rde”.*a finish this build holds/,
  ],
  [
    'a choice for a part that is not there',
    { alternatives: choosing({ stripes: ref('teal'), bodyy: ref('red') }) },
    'alternatives › first › choices',
    /“bodyy”.*Did you mean “body”/,
  ],
  [
    'an open part left without a choice',
    { alternatives: choosing({}) },
    'alternatives › first › choices › stripes',
    /found nothing.*"stripes": "shelf\/teal"/,
  ],
  [
    'a rule about an unknown part',
    { rules: [{ kind: 'same', parts: ['body', 'stripe'] }] },
    'rules › 1 › parts › 2',
    /“stripe”.*Did you mean “stripes”/,
  ],
  [
    'a rule about an unknown finish',
    {
      rules: [
        {
          kind: 'if-then',
          when: { part: 'body', finish: ref('rad') },
          wants: { part: 'stripes', oneOf: [ref('teal')] },
        },
      ],
    },
    'rules › 1 › when › finish',
    /“shelf\/rad”/,
  ],
  ['a rule kind nobody knows', { rules: [{ kind: 'prefer' }] }, 'rules › 1 › kind', /“prefer”/],
  ['a must-read part that is not there', { mustRead: ['roof'] }, 'mustRead › 1', /“roof”/],
  [
    'rules that contradict each other',
    {
      rules: [
        { kind: 'same', parts: ['body', 'stripes'] },
        {
          kind: 'never-together',
          first: { part: 'body', finish: ref('red') },
          second: { part: 'stripes', finish: ref('red') },
        },
      ],
    },
    'rules › 1, 2',
    /contradiction.*2 rules cannot hold together/,
  ],
  ['no parts at all', { parts: [] }, 'parts', /at least 1/],
  [
    'a misspelt field before the candidates of an open part',
    {
      parts: [
        body,
        { id: 'stripes', nme: 'Stripes', covers: ['stripes'], candidates: [ref('teal')] },
      ],
    },
    'parts › stripes',
    /a field “nme”.*spelling/,
  ],
  [
    'a misspelt field after the candidates of an open part',
    { parts: [body, openPart('stripes', [ref('teal')], { absnt: true })] },
    'parts › stripes',
    /a field “absnt”.*spelling/,
  ],
  [
    'the candidates themselves misspelt',
    { parts: [body, { id: 'stripes', name: 'S', covers: ['stripes'], candidtes: [ref('teal')] }] },
    'parts › stripes',
    /a field “candidtes”.*spelling/,
  ],
  [
    'a part that neither is settled nor has candidates',
    { parts: [body, { id: 'stripes', name: 'S', covers: ['stripes'] }] },
    'parts › stripes',
    /exactly one of the fields finish, candidates/,
  ],
  [
    'a wrong value on an open part',
    { parts: [body, openPart('stripes', [ref('teal')], { absent: 'yes' })] },
    'parts › stripes › absent',
    /“yes”.*true or false/,
  ],
  [
    'a part id that objects keep for themselves',
    { parts: [{ ...body, id: 'constructor' }] },
    'parts › 1 › id',
    /“constructor”/,
  ],
  [
    'a lightness over 100',
    { finishes: [plainFinish('red', [], { colour: { lab: [140, 0, 0] } }), plainFinish('teal')] },
    'finishes › red › colour › lab › 1',
    /140.*at most 100/,
  ],
  [
    'a hex colour with a letter too many',
    { finishes: [plainFinish('red', [], { colour: { srgb: '#12345g' } }), plainFinish('teal')] },
    'finishes › red › colour › srgb',
    /“#12345g”/,
  ],
  [
    'a gloss below nothing',
    { finishes: [plainFinish('red', [], { gloss60: -1 }), plainFinish('teal')] },
    'finishes › red › gloss60',
    /-1.*at least 0/,
  ],
  ['a bell in a name', { name: 'red\u0007car' }, 'name', /\\u0007.*control/],
  ['a name that turns the text around', { story: 'a\u202eb' }, 'story', /\\u202e/],
  ['half a character', { name: 'a\ud800b' }, 'name', /control|broken/],
  ['a name of a megabyte', { name: 'x'.repeat(1_000_000) }, 'name', /1000000 characters.*120/],
];

describe('a build file is refused with place and mend for', () => {
  it.each(cases)('%s', (_what, change, place, says) => {
    const problems = refusals(change);
    const here = problems.filter((problem) => problem.place === place);
    expect(problems.map((problem) => problem.place)).toContain(place);
    expect(
      here.some(({ found, expected, mend }) => says.test(`found ${found}; ${expected}. ${mend}`)),
      JSON.stringify(problems),
    ).toBe(true);
    for (const problem of problems) {
      expect(problem.found).not.toBe('');
      expect(problem.expected).not.toBe('');
      expect(problem.mend).not.toBe('');
      expect(problem.found.length).toBeLessThan(140);
    }
  });

  it.each(['', 'null', '[]', '7', '"build"', '{'])('the text %j', (text) => {
    expect(problemsOf(() => parseBuild(text))).toHaveLength(1);
  });

  it('broken JSON, by line and column', () => {
    const [problem] = problemsOf(() => parseBuild('{\n  "format": "testspoon-build",\n  oops\n}'));
    expect(problem!.place).toBe('line 3, column 3');
  });

  it('a field named twice, of which the parser would keep the last', () => {
    const text = JSON.stringify(spoiled({}), undefined, 2);
    const twice = text.replace('"scale": 24,', '"scale": 12,\n  "scale": 24,');
    // Derived: the indented text puts every field of the build at column 3 of its own line.
    const line = text.split('\n').findIndex((one) => one.includes('"scale"')) + 1;
    expect(problemsOf(() => parseBuild(twice))).toEqual([
      expect.objectContaining({
        place: `line ${line + 1}, column 3`,
        found: `the field “scale” again, first in line ${line}`,
      }),
    ]);
  });

  it('a contradiction of many rules by the first few and how many more', () => {
    const names = Array.from({ length: 20 }, (_, k) => `shade-${k}`);
    const parts = Object.fromEntries(names.map((name) => [`on-${name}`, [name, names[0]!]]));
    const rules = [
      ...names.slice(1).map((name) => ({
        kind: 'if-then',
        when: { part: 'on-shade-0', finish: ref('shade-0') },
        wants: { part: `on-${name}`, oneOf: [ref(name)] },
      })),
      { kind: 'most-finishes', count: 19 },
    ];
    const document = {
      ...plainDocument(names, [], { ...parts, 'on-shade-0': ['shade-0'] }),
      rules,
    };
    const [problem] = problemsOf(() => parseBuild(JSON.stringify(document)));
    // Derived: all 19 wishes together force 20 finishes, and without any one of them 19 do.
    expect(problem!.place).toBe('rules › 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12 and 8 more');
    expect(problem!.mend).toMatch(
      /^With these candidates 20 rules cannot hold together: rule 1 \(/,
    );
    expect(problem!.mend).toMatch(/rule 6 \(.*\) and 14 more\. /);
    expect(problem!.mend).not.toContain('rule 7');
  });

  it('NaN and Infinity, which JSON has no word for', () => {
    const text = JSON.stringify(spoiled({})).replace('"scale":24', '"scale":NaN');
    expect(problemsOf(() => parseBuild(text))[0]!.place).toMatch(/^line 1, column \d+$/);
    for (const scale of [Number.NaN, Number.POSITIVE_INFINITY]) {
      expect(problemsOf(() => buildFrom(spoiled({ scale })))[0]!.place).toBe('scale');
    }
  });

  it('hidden characters also where the value never was text', () => {
    expect(problemsOf(() => buildFrom(spoiled({ name: 'a\u2066b' })))[0]!.place).toBe('name');
  });
});

describe('problems', () => {
  it('of form and of reference are told together, with the source', () => {
    try {
      parseBuild(
        JSON.stringify(
          spoiled({
            scale: 0,
            mustRead: ['roof'],
            rules: [{ kind: 'must-echo', part: 'bonnet' }, { kind: 'nothing' }],
          }),
        ),
        'mine.json',
      );
      expect.unreachable();
    } catch (error) {
      if (!(error instanceof InputError)) throw error;
      expect(error.source).toBe('mine.json');
      const places = error.problems.map(({ place }) => place);
      expect(places).toEqual(
        expect.arrayContaining(['scale', 'mustRead › 1', 'rules › 1 › part', 'rules › 2 › kind']),
      );
    }
  });

  it('over fifty are counted', () => {
    const mustRead = Array.from({ length: 180 }, (_, k) => `ghost-${k}`);
    const problems = refusals({ mustRead });
    expect(problems).toHaveLength(mostProblems + 1);
    expect(problems.at(-1)!.found).toBe('and 130 more');
  });

  it('of ten thousand bad finishes come back bounded', () => {
    const finishes = Array.from({ length: 10_000 }, (_, k) =>
      plainFinish(`f${k}`, [], { gloss60: 400, colour: { lab: [900, 0, 0] } }),
    );
    const problems = refusals({ finishes });
    expect(problems).toHaveLength(mostProblems + 1);
  });
});

describe('size', () => {
  it('of ten thousand finishes is allowed, one more is not', () => {
    const finishes = (count: number) =>
      Array.from({ length: count }, (_, k) => plainFinish(k < 2 ? ['red', 'teal'][k]! : `f${k}`));
    const build = parseBuild(JSON.stringify(spoiled({ finishes: finishes(10_000) })));
    expect(build.finishes).toHaveLength(10_000);
    expect(refusals({ finishes: finishes(10_001) })[0]).toMatchObject({ place: 'finishes' });
  });

  it('of a hundred megabytes is refused before the text is read', () => {
    // Stands for such a text without being one: any attempt to read it throws.
    const huge = new Proxy(
      { length: 100_000_000 },
      {
        get(target, field) {
          if (field === 'length') return target.length;
          throw new Error(`read ${String(field)} of a text that should only be measured`);
        },
      },
    ) as unknown as string;
    const [problem] = problemsOf(() => parseBuild(huge));
    expect(problem).toMatchObject({ found: 'at least 100 MB of text' });
    expect(problem!.expected).toContain('32 MB');
  });

  it('of nesting is bounded too', () => {
    const deep = `${'['.repeat(100_000)}${']'.repeat(100_000)}`;
    expect(problemsOf(() => parseBuild(deep)).length).toBeGreaterThan(0);
  });
});

describe('an older version', () => {
  it('is raised step by step', () => {
    const steps: Migrations = new Map<number, (old: Loose) => Loose>([
      [1, ({ title, ...rest }: Loose) => ({ ...rest, name: title })],
      [2, (old: Loose) => ({ ...old, scale: 24 })],
    ]);
    expect(raised({ version: 1, title: 'Car' }, steps, 3)).toEqual({
      version: 3,
      name: 'Car',
      scale: 24,
    });
    expect(() => raised({ version: 0 }, steps, 3)).toThrow(RangeError);
  });
});

describe('work whose rules contradict each other', () => {
  const rules = [{ kind: 'most-finishes', count: 0 }];

  it('comes back from the browser and from its file, to be mended, but is not judged', () => {
    const build = buildFrom(spoiled({ rules }));
    expect(build.rules).toHaveLength(1);
    expect(openBuild(textOf(build))).toEqual(build);
    expect(refusals({ rules })[0]!.place).toBe('rules › 1');
  });

  it('is refused for any other fault all the same', () => {
    const text = JSON.stringify(spoiled({ rules, mustRead: ['roof'] }));
    expect(problemsOf(() => openBuild(text)).map(({ place }) => place)).toEqual(['mustRead › 1']);
  });
});

describe('file text', () => {
  it('is the same however the fields were added', () => {
    const build = buildFrom(spoiled({}));
    const reversed = Object.fromEntries(Object.entries(build).reverse()) as typeof build;
    expect(textOf(reversed)).toBe(textOf(build));
    expect(Object.keys(reversed)[0]).not.toBe(Object.keys(build)[0]);
  });

  it('opens with what it is, ends with a line break, and keeps short things on one line', () => {
    const lines = textOf(buildFrom(spoiled({}))).split('\n');
    expect(lines.slice(0, 3)).toEqual(['{', '  "format": "testspoon-build",', '  "version": 2,']);
    expect(lines).toContain('  "viewing": { "distanceMm": 400, "light": "D65" },');
    expect(lines.at(-1)).toBe('');
    expect(lines.at(-2)).toBe('}');
  });
});
