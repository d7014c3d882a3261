/** `testspoon score`: the table, its JSON shape, what the options change, and bare output. */
import { readFileSync } from 'node:fs';
import stringWidth from 'string-width';
import { beforeAll, describe, expect, it } from 'vitest';
import type { Comparison } from '../../src/score/comparison.ts';
import { demo, demoPath, type Outcome, scratch, testspoon, written } from './run.ts';

const day = ['--today', '2031-03-01'];
const scoreKeys = ['contrast', 'accent', 'sheen', 'harmony', 'steadiness', 'readiness'];
type Printed = Comparison & {
  alternatives: { evidence: { sentence: string; numbers: Record<string, { unit: string }> }[] }[];
};
const printed = ({ out }: Outcome): Printed => JSON.parse(out);

let plain: Outcome;
let json: Outcome;
beforeAll(async () => {
  [plain, json] = await Promise.all([
    testspoon(['score', demoPath, ...day]),
    testspoon(['score', demoPath, ...day, '--json']),
  ]);
});

describe('the comparison as JSON', () => {
  it('has exactly the published fields', () => {
    expect(json.status).toBe(0);
    const comparison = printed(json);
    expect(Object.keys(comparison)).toEqual([
      'light',
      'distanceMm',
      'today',
      'alternatives',
      'closeness',
    ]);
    expect(comparison).toMatchObject({ light: 'D65', distanceMm: 400, today: '2031-03-01' });
    for (const sheet of comparison.alternatives) {
      expect(Object.keys(sheet)).toEqual([
        'id',
        'letter',
        'name',
        'overall',
        'pareto',
        'broken',
        'scores',
        'evidence',
      ]);
      expect(Object.keys(sheet.scores)).toEqual(scoreKeys);
      for (const score of [sheet.overall, ...Object.values(sheet.scores)]) {
        expect(score).toBeGreaterThanOrEqual(0);
        expect(score).toBeLessThanOrEqual(100);
      }
      expect(sheet.evidence.length).toBeGreaterThan(0);
      for (const evidence of sheet.evidence) {
        expect(Object.keys(evidence)).toEqual(['score', 'kind', 'parts', 'numbers', 'sentence']);
        expect(scoreKeys).toContain(evidence.score);
        expect(evidence.sentence).toMatch(/^\S.+[.?!]$/s);
        expect(evidence.sentence).not.toMatch(/NaN|undefined|Infinity/);
        for (const { unit } of Object.values(evidence.numbers)) expect(unit).toBeTypeOf('string');
      }
    }
    for (const pair of comparison.closeness) {
      expect(Object.keys(pair)).toEqual(['a', 'b', 'aheadIn100']);
    }
  });

  it('names every alternative of the file, in its order, under neutral letters', () => {
    const ids = (demo().alternatives as { id: string }[]).map(({ id }) => id);
    const { alternatives, closeness } = printed(json);
    expect(alternatives.map(({ id }) => id)).toEqual(ids);
    expect(alternatives.map(({ letter }) => letter)).toEqual(['A', 'B', 'C']);
    // Three alternatives make three pairs.
    expect(closeness).toHaveLength(3);
  });

  it('comes out the same each time and from standard input', async () => {
    const again = await testspoon(['score', '-', ...day, '--json'], {
      input: readFileSync(demoPath),
    });
    expect(again.status).toBe(0);
    expect(again.out).toBe(json.out);
  });

  it('takes light, distance and day from the command line', async () => {
    const args = ['--light', 'A', '--distance', '1000', '--today', '2031-04-01', '--json'];
    const comparison = printed(await testspoon(['score', demoPath, ...args]));
    expect(comparison).toMatchObject({ light: 'A', distanceMm: 1000, today: '2031-04-01' });
    const contrast = ({ alternatives }: Printed): number[] =>
      alternatives.map(({ scores }) => scores.contrast);
    expect(contrast(comparison)).not.toEqual(contrast(printed(json)));
  });
});

describe('the comparison as a page of text', () => {
  it('shows alternatives, open parts, six scores, rules and reasons', () => {
    expect(plain.status).toBe(0);
    const parts = demo().parts as { name: string; candidates?: unknown }[];
    const open = parts.filter(({ candidates }) => candidates !== undefined);
    const wanted = [
      ...open.map(({ name }) => name),
      'Overall',
      'Without readiness',
      'Contrast',
      'Accent balance',
      'Sheen pairing',
      'Kept apart',
      'Steadiness',
      'Readiness',
      'Beaten by',
      'Rules',
      'How sure is the order?',
    ];
    for (const words of wanted) expect(plain.out).toContain(words);
    for (const { letter, name } of printed(json).alternatives) {
      expect(plain.out).toContain(`${letter}  ${name}`);
    }
  });

  it('says the same as the JSON: each first reason, word for word', () => {
    const flat = plain.out.replace(/\s+/g, ' ');
    for (const { evidence } of printed(json).alternatives) {
      expect(flat).toContain(evidence[0]?.sentence);
    }
  });

  it('says that a race is close, or in how many draws it is decided', () => {
    for (const { aheadIn100 } of printed(json).closeness) {
      const words = aheadIn100 < 90 ? 'too close to call; ask your viewers' : 'stays ahead of';
      expect(plain.out).toContain(words);
    }
  });

  it('holds no escape codes when piped, and none with NO_COLOR even where colour is forced', async () => {
    expect(plain.out + plain.err).not.toContain('\u001b');
    const env = { NO_COLOR: '1', FORCE_COLOR: '3', COLORTERM: 'truecolor' };
    const { out, err } = await testspoon(['score', demoPath, ...day], { env });
    expect(out + err).not.toContain('\u001b');
  });

  it('draws swatches in true colour where that is wanted, and drops them for 16 colours', async () => {
    const full = await testspoon(['score', demoPath, ...day], { env: { FORCE_COLOR: '3' } });
    expect(full.out).toContain('\u001b[48;2;');
    const few = await testspoon(['score', demoPath, ...day], { env: { FORCE_COLOR: '1' } });
    expect(few.out).not.toContain('\u001b[48;');
    expect(few.out).toContain('\u001b[1m');
  });

  it.each([32, 60, 120])('fits into %i columns', async (columns) => {
    const env = { COLUMNS: String(columns) };
    const { out } = await testspoon(['score', demoPath, ...day], { env });
    const widest = Math.max(...out.split('\n').map((line) => stringWidth(line)));
    expect(widest).toBeLessThanOrEqual(columns);
  });
});

describe('builds of other shapes', () => {
  const folder = scratch();

  it('with no alternatives are told so, not refused', async () => {
    const path = written(folder, 'none.json', { ...demo(), alternatives: [] });
    const { status, out } = await testspoon(['score', path, ...day]);
    expect(status).toBe(0);
    expect(out).toContain('no alternatives to compare yet');
    const { out: text } = await testspoon(['score', path, ...day, '--json']);
    expect(JSON.parse(text)).toMatchObject({ alternatives: [], closeness: [] });
  });

  it('with broken rules say which rule, beside the alternative that breaks it', async () => {
    const changed = demo() as { alternatives: { choices: Record<string, string> }[] };
    const [first = ['', ''], second = ['', '']] = Object.entries(changed.alternatives[0]!.choices);
    const wears = ([part, finish]: [string, string]) => ({ part, finish });
    const rules = [{ kind: 'never-together', first: wears(first), second: wears(second) }];
    const path = written(folder, 'rule.json', { ...changed, rules });
    const { status, out } = await testspoon(['score', path, ...day]);
    expect(status).toBe(0);
    expect(out).toContain('1 broken');
    expect(out).toContain('Rule broken');
    const { out: text } = await testspoon(['score', path, ...day, '--json']);
    expect(JSON.parse(text).alternatives[0].broken).toHaveLength(1);
  });

  it('with names in any script keep their columns', async () => {
    const changed = demo() as { alternatives: { name: string }[] };
    for (const alternative of changed.alternatives) alternative.name = '橙色の縞 e\u0301';
    const path = written(folder, 'wide.json', changed);
    const { out } = await testspoon(['score', path, ...day], { env: { COLUMNS: '80' } });
    expect(out).toContain('橙色の縞');
    expect(Math.max(...out.split('\n').map((line) => stringWidth(line)))).toBeLessThanOrEqual(80);
  });
});
