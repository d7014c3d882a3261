/** `testspoon rank`: the table, its JSON shape, what the options change, and what is refused. */
import { spawn } from 'node:child_process';
import stringWidth from 'string-width';
import { parse } from 'valibot';
import { beforeAll, describe, expect, it } from 'vitest';
import { type Build, buildSchema, isOpen } from '../../src/build/build.ts';
import { demo, demoPath, type Outcome, program, scratch, testspoon, written } from './run.ts';

const day = ['--today', '2031-03-01'];
const build: Build = parse(buildSchema, demo());
const open = build.parts.filter(isOpen);

interface Row {
  readonly place: number;
  readonly choices: Record<string, string>;
  readonly overall: number;
  readonly scores: Record<string, number>;
  readonly toBuy: string[];
  readonly aheadOfNext: number | null;
  readonly why: string | null;
}
interface Printed {
  readonly combinations: string;
  readonly isProved: boolean;
  readonly atMost: number;
  readonly gap: number;
  readonly rows: Row[];
  readonly rules: { rule: number; kind: string }[];
}
const printed = ({ out }: Outcome): Printed => JSON.parse(out);
const folder = scratch();
const rank = (...args: string[]): Promise<Outcome> =>
  testspoon(['rank', demoPath, ...day, ...args]);

let json: Outcome;
let plain: Outcome;
beforeAll(async () => {
  [json, plain] = await Promise.all([
    rank('--top', '6', '--json'),
    testspoon(['rank', demoPath, ...day, '--top', '6'], { env: { COLUMNS: '80' } }),
  ]);
});

describe('the ranking as JSON', () => {
  it('has exactly the published fields', () => {
    expect(json.status).toBe(0);
    const ranking = printed(json);
    expect(Object.keys(ranking)).toEqual([
      'light',
      'today',
      'combinations',
      'isProved',
      'atMost',
      'gap',
      'rows',
      'rules',
    ]);
    const product = open.reduce((all, { candidates }) => all * candidates.length, 1);
    expect(ranking).toMatchObject({ combinations: String(product), isProved: true, gap: 0 });
    expect(ranking.rules.map(({ rule }) => rule)).toEqual(build.rules.map((_, at) => at + 1));
    for (const row of ranking.rows) {
      expect(Object.keys(row)).toEqual([
        'place',
        'choices',
        'overall',
        'scores',
        'toBuy',
        'aheadOfNext',
        'why',
      ]);
      expect(Object.keys(row.choices)).toEqual(open.map(({ id }) => id));
    }
    const overalls = ranking.rows.map(({ overall }) => overall);
    expect(overalls).toEqual([...overalls].sort((a, b) => b - a));
    expect(ranking.atMost).toBeCloseTo(overalls[0]!, 3);
    expect(ranking.rows.at(-1)).toMatchObject({ aheadOfNext: null, why: null });
  });

  // Oracle: the score sheet of the same combinations, by the other command.
  it('gives the numbers that the score sheet gives', async () => {
    const { rows } = printed(json);
    const alternatives = rows.map(({ place, choices }) => ({
      id: `place-${place}`,
      name: `Place ${place}`,
      choices,
    }));
    const file = written(folder, 'ranked.json', { ...demo(), alternatives });
    const scored = await testspoon(['score', file, ...day, '--json']);
    const sheets: Pick<Row, 'overall' | 'scores'>[] = JSON.parse(scored.out).alternatives;
    rows.forEach(({ overall, scores }, at) => {
      expect(overall).toBeCloseTo(sheets[at]!.overall, 9);
      expect(scores).toEqual(sheets[at]!.scores);
    });
  });
});

describe('the ranking as text', () => {
  it('says what is proved, why each stands where it stands, and what the rules cost', () => {
    expect(plain.status).toBe(0);
    expect(plain.err).toBe('');
    expect(plain.out).toMatch(
      /These are the best 6 that keep every rule, of 2,187 combinations:\s+proved/,
    );
    expect(plain.out).toContain('Why they stand in this order');
    expect(plain.out).toContain('What each rule costs');
    expect(plain.out).not.toMatch(/undefined|NaN|Infinity/);
  });

  it('runs over no edge', () => {
    for (const line of plain.out.split('\n')) expect(stringWidth(line)).toBeLessThanOrEqual(80);
  });
});

describe('what is asked', () => {
  it('holds a part at one finish', async () => {
    const held = printed(await rank('--top', '5', '--json', '--lock', 'mirrors=dragonfly'));
    for (const { choices } of held.rows) expect(choices.mirrors).toBe('corner-shop/dragonfly');
    const [best] = printed(json).rows;
    expect(held.rows[0]!.overall).toBeLessThanOrEqual(best!.overall);
  });

  it('lets open parts wear anything on hand, and is no worse for it to buy', async () => {
    const free = printed(await rank('--top', '1', '--json', '--anything-on-hand'));
    expect(free.isProved).toBe(true);
    expect(BigInt(free.combinations)).toBeGreaterThan(2187n);
  });

  it('says what could still be better where it is stopped at once', async () => {
    const stopped = printed(await rank('--top', '3', '--json', '--limit-seconds', '0'));
    const [best] = printed(json).rows;
    expect(stopped.isProved).toBe(false);
    expect(stopped.atMost).toBeGreaterThanOrEqual(best!.overall - 1e-3);
    expect(stopped.gap).toBeCloseTo(stopped.atMost - stopped.rows[0]!.overall, 6);
  });
});

describe('Ctrl-C', () => {
  // Exit status of shells for a program ended by signal 2: 128 + 2 (POSIX leaves it above 128).
  it('ends the search, shows what has been found and what may still beat it, and exits 130', async () => {
    const settled = build.parts.filter((part) => !isOpen(part) && part.id !== 'body');
    const opened = new Set(settled.slice(0, 7).map(({ id }) => id));
    const parts = build.parts.map((part) => {
      if (isOpen(part) || !opened.has(part.id)) return part;
      const { finish, painted: _, ...rest } = part;
      return { ...rest, candidates: [finish] };
    });
    const file = written(folder, 'many.json', { ...demo(), parts, alternatives: [] });
    const racks = ['--from', 'corner-shop', '--from', 'bench-drawer'];
    const child = spawn(process.execPath, [
      ...[program, 'rank', file, ...day, '--top', '1000', '--different', '--json', ...racks],
    ]);
    let out = '';
    let progress = '';
    child.stdout.on('data', (text) => {
      out += text;
    });
    child.stderr.once('data', (text) => {
      progress = String(text);
      child.kill('SIGINT');
    });
    const status = await new Promise((resolve) => child.on('close', resolve));
    expect(progress).toMatch(/no combination can beat it by more|proved the best/);
    expect(status).toBe(130);
    const { isProved, rows, atMost } = JSON.parse(out) as Printed;
    expect(isProved).toBe(false);
    expect(rows.length).toBeGreaterThan(0);
    expect(atMost).toBeGreaterThanOrEqual(rows[0]!.overall - 1e-3);
  });
});

describe('what cannot be ranked is refused in words', () => {
  const settled = build.parts.map((part) => {
    if (!isOpen(part)) return part;
    const { candidates, ...rest } = part;
    return { ...rest, finish: candidates[0] };
  });
  const [stripes] = open;
  const never = stripes!.candidates.map((finish) => ({
    kind: 'never-together',
    first: { part: stripes!.id, finish },
    second: { part: 'body', finish: 'corner-shop/dragonfly' },
  }));
  const files: [string, object, RegExp][] = [
    ['nothing open', { ...demo(), parts: settled, rules: [], alternatives: [] }, /open/],
    ['rules that cannot hold', { ...demo(), rules: never, alternatives: [] }, /cannot hold/],
    ['weights that are all nothing', { ...demo(), weights: zeros() }, /weight/],
  ];
  it.each(files)('%s', async (name, content, said) => {
    const file = written(folder, `${name.replaceAll(' ', '-')}.json`, content);
    const { status, err, out } = await testspoon(['rank', file, ...day]);
    expect(status).toBe(1);
    expect(out).toBe('');
    expect(err).toMatch(said);
  });

  it.each([
    ['--lock', 'mirrors=pink', 1, /expected {2}one of corner-shop\/dragonfly/],
    ['--lock', 'body=corner-shop/marigold', 1, /settled/],
    ['--lock', 'mirrors', 1, /a part and a finish/],
    ['--from', 'nowhere', 1, /one of bench-drawer/],
    ['--top', '0', 2, /from 1 to 1000/],
    ['--top', '100000', 2, /from 1 to 1000/],
    ['--limit-seconds', '-1', 2, /from 0/],
    ['--limit-seconds', 'soon', 2, /from 0/],
  ] as const)('%s %s', async (name, value, exit, said) => {
    const { status, err } = await rank(name, value);
    expect(status).toBe(exit);
    expect(err).toMatch(said);
  });
});

function zeros(): Record<string, number> {
  return Object.fromEntries(Object.keys(build.weights).map((key) => [key, 0]));
}
