/** Bad input: refused with file, place, what was found, what was expected and how to mend it. */
import { closeSync, ftruncateSync, mkdirSync, openSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { demo, demoPath, scratch, testspoon, written } from './run.ts';

const folder = scratch();
type Changed = Record<string, unknown> & { parts: Record<string, unknown>[]; finishes: object[] };
const changed = (change: (build: Changed) => void): Changed => {
  const build = demo() as Changed;
  change(build);
  return build;
};
const refusal = /cannot be used[\s\S]+found +\S[\s\S]+expected +\S[\s\S]+to mend +\S/;

const faults: readonly (readonly [what: string, content: unknown, words: RegExp])[] = [
  ['JSON cut short', '{"format": "testspoon-build", ', /line 1, column/],
  ['an empty file', '', /./],
  ['bytes that are no text', Buffer.from([0x7b, 0xff, 0xfe, 0x00]), /UTF-8/],
  ['a number that is no number', '{"format": NaN}', /line 1, column 12/],
  ['a list', [], /format|build/],
  ['another format', { format: 'someone-elses' }, /testspoon-build/],
  ['a newer version', changed((build) => Object.assign(build, { version: 99 })), /newer Testspoon/],
  ['a colour out of range', changed((build) => put(build, [130, 0, 0])), /at most 100/],
  ['an unknown field', changed((build) => Object.assign(build, { colour: 1 })), /field/],
  ['an unknown car', changed((build) => Object.assign(build, { car: 'hovercraft' })), /roadster/],
  [
    'a part the car does not have',
    changed((build) => Object.assign(build.parts[0]!, { covers: ['wings'] })),
    /wings/,
  ],
  [
    'a finish the build does not hold',
    changed((build) =>
      build.parts.push({ id: 'x', name: 'X', covers: ['wipers'], finish: 'no/such' }),
    ),
    /no\/such/,
  ],
  ['one id twice', changed((build) => build.parts.push(build.parts[0]!)), /parts/],
  [
    'a name of a megabyte',
    changed((build) => Object.assign(build, { name: 'x'.repeat(1e6) })),
    /at most 120 characters/,
  ],
  [
    'a name that turns the reading direction',
    changed((build) => Object.assign(build, { name: 'blue \u202edet' })),
    /\\u202e/,
  ],
  [
    'a name that steers the terminal',
    changed((build) => Object.assign(build, { name: 'blue \u001b[2J' })),
    /\\u001b/,
  ],
];

function put(build: Changed, lab: number[]): void {
  Object.assign(build.finishes[0]!, { colour: { lab } });
}

describe('score and check refuse', () => {
  // Both commands go through one door; taking turns halves the processes to start.
  it.each(faults.map((fault, at) => [...fault, at % 2 === 0 ? 'score' : 'check'] as const))(
    '%s',
    async (_, content, words, command) => {
      const path = written(folder, 'bad.json', content);
      const { status, out, err } = await testspoon([command, path]);
      expect(status).toBe(1);
      expect(out).toBe('');
      expect(err).toContain('bad.json');
      expect(err).toMatch(refusal);
      expect(err).toMatch(words);
      // Neither colour codes nor anything the file smuggled in; bounded in length.
      expect(err).not.toMatch(/\p{Cf}|\p{Cc}(?<!\n)/u);
      expect(err.length).toBeLessThan(20_000);
    },
  );

  it('rules that no choice can keep, naming them', async () => {
    const build = changed((one) => {
      const open = one.parts.filter(({ candidates }) => candidates !== undefined);
      const [first, second] = open as { id: string; candidates: string[] }[];
      const wears = { part: first!.id, finish: first!.candidates[0]! };
      Object.assign(one, {
        rules: first!.candidates.map((finish) => ({
          kind: 'never-together',
          first: { ...wears, finish },
          second: { ...wears, finish },
        })),
      });
      expect(second).toBeDefined();
    });
    const path = written(folder, 'rules.json', build);
    const { status, err } = await testspoon(['score', path]);
    expect(status).toBe(1);
    expect(err).toMatch(/rules › 1/);
  });

  it('files that are not there, folders, and files too large to be ours before reading them', async () => {
    const missing = await testspoon(['score', join(folder, 'missing.json')]);
    expect(missing.status).toBe(1);
    expect(missing.err).toMatch(/missing\.json[\s\S]+no such file/);
    mkdirSync(join(folder, 'shelf'), { recursive: true });
    const isFolder = await testspoon(['check', join(folder, 'shelf')]);
    expect(isFolder.status).toBe(1);
    expect(isFolder.err).toContain('a folder');
    // A hole of 100 MB: it takes no room and would read as zeros, were it read.
    const path = join(folder, 'large.json');
    const file = openSync(path, 'w');
    ftruncateSync(file, 100e6);
    closeSync(file);
    const large = await testspoon(['score', path]);
    expect(large.status).toBe(1);
    expect(large.err).toMatch(/100 MB[\s\S]+at most 64 MB/);
  });

  it('endless standard input as soon as it is too much', async () => {
    const { status, err } = await testspoon(['check', '-'], { input: Buffer.alloc(70e6, 0x20) });
    expect(status).toBe(1);
    expect(err).toMatch(/standard input[\s\S]+at most 64 MB/);
  });

  it('but not a rack of 10,000 finishes', async () => {
    const finishes = Array.from({ length: 10_000 }, (_, k) => ({
      id: `finish-${k}`,
      name: `Finish ${k}`,
      effect: 'solid',
      colour: { srgb: '#336699' },
      gloss60: 50,
      provenance: { how: 'guess' },
    }));
    const rack = { format: 'testspoon-rack', version: 1, id: 'big', name: 'Big', finishes };
    const { status, out } = await testspoon(['check', written(folder, 'big.json', rack)]);
    expect(status).toBe(0);
    expect(out).toContain('10000 finishes');
  });

  it('file names that would steer the terminal are spelt out', async () => {
    const { status, err } = await testspoon(['score', '/nowhere/\u001b[2J.json']);
    expect(status).toBe(1);
    expect(err).not.toContain('\u001b');
  });
});

describe('the command line', () => {
  it.each([
    [[]],
    [['polish', demoPath]],
    [['score']],
    [['score', demoPath, '--loudly']],
    [['score', demoPath, '--light', 'candle']],
    [['score', demoPath, '--distance', '1']],
    [['score', demoPath, '--today', '2031-02-30']],
    [['see', 'bench-drawer']],
    [['see', 'bench-drawer', 'cherry-syrup', '--coats', '1.5']],
    [['new', 'x.json', '--scale', '0']],
  ])('%j is a fault of usage', async (args) => {
    const { status, out, err } = await testspoon(args);
    expect(status).toBe(2);
    expect(out).toBe('');
    expect(err).toMatch(/\S/);
  });

  it('gives help and version on request', async () => {
    const help = await testspoon(['--help']);
    expect(help.status).toBe(0);
    for (const command of ['score', 'see', 'check', 'new']) expect(help.out).toContain(command);
    expect((await testspoon(['score', '--help'])).status).toBe(0);
    expect((await testspoon(['--version'])).out).toMatch(/^\d+\.\d+\.\d+\n$/);
  });
});
