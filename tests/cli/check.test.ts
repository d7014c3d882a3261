/** `testspoon check` and `testspoon new`: our own files pass, and what is written can be read. */
import { readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { demoPath, program, scratch, testspoon, written } from './run.ts';

const folder = scratch();
const at = (path: string): string => fileURLToPath(new URL(`../../${path}`, import.meta.url));

describe('check', () => {
  it.each([
    ['src/build/demo.json', 'a sound build'],
    ['palettes/bench-drawer.json', 'a sound rack'],
    ['palettes/corner-shop.json', 'a sound rack'],
    ['models/roadster.sight.json', 'a sound sight table'],
  ])('knows %s by its content', async (path, words) => {
    // Under a name that says nothing, so that only the content can tell.
    const copy = written(folder, 'thing', readFileSync(at(path)));
    const { status, out, err } = await testspoon(['check', copy]);
    expect(err).toBe('');
    expect(status).toBe(0);
    expect(out.replace(/\s+/g, ' ')).toContain(words);
  });

  it('tells which parts are not on the model, and compares without them', async () => {
    const demo = JSON.parse(readFileSync(demoPath, 'utf8')) as {
      parts: { id: string; absent: boolean }[];
    };
    for (const part of demo.parts) part.absent = part.id === 'mirrors';
    const path = written(folder, 'no-mirrors.json', JSON.stringify(demo));
    const checked = await testspoon(['check', path]);
    expect(checked.status).toBe(0);
    expect(checked.out.replace(/\s+/g, ' ')).toContain(
      'Not on this model, and not scored: Mirrors.',
    );
    const scored = await testspoon(['score', path, '--today', '2031-03-01']);
    expect(scored.status).toBe(0);
    expect(scored.out).toContain('Badges');
    expect(scored.out).not.toContain('Mirrors');
  });

  it('tells every bad row of a CSV rack, and fails', async () => {
    const csv = written(
      folder,
      'rack.csv',
      'id,name,effect,colour,gloss60,provenance.how\n' +
        'sky,Sky,solid,#88aacc,85,guess\n' +
        'one,One,shiny,#88aacc,85,guess\n' +
        'two,Two,solid,#88aacc,185,guess\n',
    );
    const { status, err } = await testspoon(['check', csv]);
    expect(status).toBe(1);
    expect(err).toContain('2 problems');
    expect(err).toMatch(/row 3[\s\S]+row 4/);
    const sound = written(
      folder,
      'sound.csv',
      readFileSync(csv, 'utf8').replace(/^(one|two).*\n/gm, ''),
    );
    expect((await testspoon(['check', sound])).status).toBe(0);
  });

  it('tells what it takes for granted in a table of a builder’s own', async () => {
    const own = written(
      folder,
      'own.csv',
      'Name;Hex;Gloss;Shelf\nSky;#88aacc;85,5;3\nSea;#225577;;4\n',
    );
    const { status, out } = await testspoon(['check', own]);
    expect(status).toBe(0);
    const words = out.replace(/\s+/g, ' ');
    expect(words).toContain('2 finishes');
    expect(words).toMatch(/taken for granted.*1 finish had no gloss; taken as semi-gloss/);
    expect(words).toContain('“Shelf”');
  });

  it('tells an empty table from one whose columns it does not know', async () => {
    const empty = await testspoon(['check', written(folder, 'empty.csv', '')]);
    expect([empty.status, empty.err]).toEqual([1, expect.stringContaining('no text in it')]);
    const strange = await testspoon([
      'check',
      written(folder, 'strange.csv', 'Shelf,Price\n1,2\n'),
    ]);
    expect([strange.status, strange.err]).toEqual([1, expect.stringMatching(/“Shelf”, “Price”/)]);
  });
});

describe('new', () => {
  it('writes a build that passes check and is compared at once', async () => {
    const path = join(folder, 'mine.json');
    const made = await testspoon(['new', path, '--name', 'Été roadster', '--scale', '25']);
    expect(made.err).toBe('');
    expect(made.status).toBe(0);
    expect(JSON.parse(readFileSync(path, 'utf8'))).toMatchObject({
      name: 'Été roadster',
      id: 'ete-roadster',
      scale: 25,
    });
    expect((await testspoon(['check', path])).status).toBe(0);
    const { status, out } = await testspoon(['score', path, '--json']);
    expect(status).toBe(0);
    expect(JSON.parse(out).alternatives.length).toBeGreaterThanOrEqual(2);
  });

  it('keeps a file that is there, unless told to write over it', async () => {
    const path = written(folder, 'kept.json', 'precious');
    const refused = await testspoon(['new', path]);
    expect(refused.status).toBe(1);
    expect(refused.err).toContain('--force');
    expect(readFileSync(path, 'utf8')).toBe('precious');
    expect((await testspoon(['new', path, '--force'])).status).toBe(0);
    expect((await testspoon(['check', path])).status).toBe(0);
  });

  it('writes the demo on request, the same build as the page opens with', async () => {
    const path = join(folder, 'demo.json');
    expect((await testspoon(['new', path, '--demo'])).status).toBe(0);
    const day = ['--today', '2031-03-01', '--json'];
    const [copy, own] = await Promise.all([
      testspoon(['score', path, ...day]),
      testspoon(['score', demoPath, ...day]),
    ]);
    expect(copy.out).toBe(own.out);
  });

  it('refuses names that would not show as they are, and leaves no file behind', async () => {
    const path = join(folder, 'hostile.json');
    const { status, err } = await testspoon(['new', path, '--name', 'nice\u202egnp.exe\u001b[2J']);
    expect(status).toBe(1);
    expect(err).not.toMatch(/\p{Cf}|\p{Cc}(?<!\n)/u);
    expect(statSync(path, { throwIfNoEntry: false })).toBeUndefined();
  });
});

describe('the built program', () => {
  it('is one file that a shell can start', () => {
    expect(readFileSync(program, 'utf8')).toMatch(/^#!\/usr\/bin\/env node\n/);
    if (process.platform !== 'win32') expect(statSync(program).mode & 0o111).toBe(0o111);
  });
});
