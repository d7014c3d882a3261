/**
 * Does the house stand as DEVELOPERS.md says? Reads every import line of `src`, `models` and
 * `tests`; fails on a breach of direction, a cycle, a room that outgrew its walls, or anything at
 * the top level that does not belong there. Each rule is first shown to catch an offender.
 */
import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { posix } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { moduleFrom, type Source } from './structure/module.ts';
import { cyclesAmong, directionFaults, isToolSetting, purityFaults } from './structure/rooms.ts';

const root = fileURLToPath(new URL('..', import.meta.url));
/** Files of the repository, tracked or about to be, as git sees them. */
const paths = execFileSync('git', ['ls-files', '-co', '--exclude-standard', '-z'], { cwd: root })
  .toString()
  .split('\0')
  .filter((path) => path !== '');
const read = (path: string): Source => ({ path, text: readFileSync(root + path, 'utf8') });

const isCode = (path: string): boolean => /^(src|models|tests)\/.*\.tsx?$/.test(path);
const broken: string[] = [];
const modules = paths.filter(isCode).flatMap((path) => {
  try {
    return [moduleFrom(read(path))];
  } catch (error) {
    broken.push(String(error));
    return [];
  }
});
const source = modules.filter(({ path }) => !path.startsWith('tests/'));

const topLevel = [
  'README.md',
  'DEVELOPERS.md',
  'package.json',
  'package-lock.json',
  'tsconfig.json',
  'src',
  'models',
  'tests',
  'palettes',
];
const mostLines = 350;
const mostFiles = 12;
const mostMedianLines = 90;

const strangersAmong = (all: readonly string[]): string[] =>
  [...new Set(all.map((path) => path.split('/')[0] ?? ''))].filter(
    (name) => !topLevel.includes(name) && !name.startsWith('.'),
  );
const linesOf = (text: string): number => text.split('\n').length - 1;
const longAmong = (files: readonly Source[]): string[] =>
  files
    .filter(({ text }) => linesOf(text) > mostLines)
    .map(({ path, text }) => `${path}: ${linesOf(text)} lines`);
const crowdedAmong = (all: readonly string[]): string[] => {
  const counts = new Map<string, number>();
  for (const path of all.filter((one) => /^src\/.*\.tsx?$/.test(one) && !isToolSetting(one))) {
    const folder = posix.dirname(path);
    counts.set(folder, (counts.get(folder) ?? 0) + 1);
  }
  return [...counts].filter(([, count]) => count > mostFiles).map(([folder]) => folder);
};
// A home folder, a drive, a scratch folder; or the host of a package registry.
const machinePath = /(?:^|[\s"'`(=:])(?:\/(?:home|Users|root|work)\/[\w.-]+|[A-Z]:\\\w+)/m;
const registryHost = /\bregistry\.[a-z0-9-]+\.[a-z]{2,}|\/npm\/-\/|_auth[T]oken/;
const leaksAmong = (files: readonly Source[]): string[] =>
  files
    .filter(({ text }) => machinePath.test(text) || registryHost.test(text))
    .map(({ path }) => path);
const excuse =
  /@ts-(?:ignore|nocheck|expect-error)|biome-ignore|eslint-disable|\b(?:TODO|FIXME|XXX)\b/;
const excusesAmong = (files: readonly Source[]): string[] =>
  files.filter(({ text }) => excuse.test(text)).map(({ path }) => path);
const anyAmong = (all: readonly { path: string; anyLines: readonly number[] }[]): string[] =>
  all.flatMap(({ path, anyLines }) => anyLines.map((line) => `${path}:${line}`));

describe('the rules catch an offender', () => {
  const made = (path: string, text: string) => moduleFrom({ path, text });

  it('sees every way to import', () => {
    const { imports } = made(
      'src/colour/a.ts',
      [
        "import './effect.ts';",
        "import type { A } from '../finish/a.ts';",
        "import { type B, c } from 'culori';",
        "export * from './all.ts';",
        "export type { D } from '../score/d.ts';",
        "const e = await import('./e.ts');",
        "type F = import('./f.ts').F;",
        "const g = import.meta.glob(['../../models/*.json', './g.json'], { eager: true });",
        "// import './comment.ts'",
        'const text = "import \'./string.ts\'";',
      ].join('\n'),
    );
    expect([...imports].sort()).toEqual(
      [
        'culori',
        'models/*.json',
        'src/colour/all.ts',
        'src/colour/e.ts',
        'src/colour/effect.ts',
        'src/colour/f.ts',
        'src/colour/g.json',
        'src/finish/a.ts',
        'src/score/d.ts',
      ].sort(),
    );
  });

  it('refuses a climb, a foreign package, Node in a pure room and an unknown room', () => {
    const faults = directionFaults([
      made('src/colour/a.ts', "import type { A } from '../finish/a.ts';"),
      made('src/ground/b.ts', "import * as v from 'valibot';"),
      made('src/car/c.ts', "import { readFileSync } from 'fs';"),
      made('src/score/d.ts', "import 'node:path';"),
      made('src/build/e.ts', "import table from '../../models/roadster.sight.json';"),
      made('src/attic/f.ts', "import '../ground/unit.ts';"),
      made('src/app/g.ts', "import '../server/start.ts';"),
      made('models/h.ts', "import '../src/finish/finish.ts';"),
      made('src/cli/i.ts', "import '../../tests/cli/run.ts';"),
    ]);
    expect(faults).toHaveLength(9);
  });

  it('lets lawful imports pass', () => {
    const faults = directionFaults([
      made('src/finish/a.ts', "import * as v from 'valibot'; import '../colour/lab.ts';"),
      made('src/cli/b.ts', "import 'node:fs'; import.meta.glob('../../palettes/*.json');"),
      made('models/c.ts', "import { Document } from '@gltf-transform/core';"),
    ]);
    expect(faults).toEqual([]);
  });

  it('finds a cycle of three, and none in a diamond', () => {
    const ring = [
      made('src/car/a.ts', "import './b.ts';"),
      made('src/car/b.ts', "import type { C } from './c.ts';"),
      made('src/car/c.ts', "import './a.ts';"),
    ];
    expect(cyclesAmong(ring)).toEqual([
      'src/car/a.ts → src/car/b.ts → src/car/c.ts → src/car/a.ts',
    ]);
    const diamond = [
      made('src/car/a.ts', "import './b.ts'; import './c.ts';"),
      made('src/car/b.ts', "import './d.ts';"),
      made('src/car/c.ts', "import './d.ts';"),
      made('src/car/d.ts', ''),
    ];
    expect(cyclesAmong(diamond)).toEqual([]);
  });

  it('finds clock, chance, DOM and network in a pure room, and only there', () => {
    const text = [
      'const now = Date.now(); const then = new Date(); const chance = Math.random();',
      'document.title = ""; const size = window.innerWidth; const reply = fetch("a");',
    ].join('\n');
    expect(purityFaults([made('src/score/a.ts', text)])).toHaveLength(6);
    expect(purityFaults([made('src/cli/a.ts', text)])).toEqual([]);
    const lawful = 'const day = new Date("2031-05-24"); const m = { document: 1 }; // fetch()';
    expect(purityFaults([made('src/score/a.ts', lawful)])).toEqual([]);
  });

  it('finds strangers, long files, crowded folders, loose types, excuses and leaks', () => {
    expect(strangersAmong(['notes.txt', 'src/a.ts', '.ci/run'])).toEqual(['notes.txt']);
    expect(longAmong([{ path: 'a.ts', text: '\n'.repeat(mostLines + 1) }])).toHaveLength(1);
    const thirteen = Array.from({ length: 13 }, (_, k) => `src/car/${k}.ts`);
    expect(crowdedAmong(thirteen)).toEqual(['src/car']);
    expect(anyAmong([made('src/car/a.ts', '\nlet a: any;')])).toEqual(['src/car/a.ts:2']);
    const hints = ['@ts', '-ignore'].join('');
    expect(excusesAmong([{ path: 'a.ts', text: `// ${hints}` }])).toEqual(['a.ts']);
    const home = ['', 'home', 'someone', 'car.glb'].join('/');
    expect(leaksAmong([{ path: 'a.ts', text: `open('${home}')` }])).toEqual(['a.ts']);
    const host = ['registry', 'example', 'com'].join('.');
    expect(leaksAmong([{ path: 'a.ts', text: `from ${host}` }])).toEqual(['a.ts']);
  });
});

describe('the house', () => {
  it('has every room of the pure core', () => {
    for (const room of ['ground', 'colour', 'finish', 'car', 'build', 'score', 'cli', 'server']) {
      expect(source.some(({ path }) => path.startsWith(`src/${room}/`))).toBe(true);
    }
  });

  it('can be read whole', () => expect(broken).toEqual([]));

  it('holds nothing else at the top level', () => expect(strangersAmong(paths)).toEqual([]));

  it('imports one way only', () => expect(directionFaults(source)).toEqual([]));

  it('has no import cycle', () => expect(cyclesAmong(modules)).toEqual([]));

  it('keeps clock, chance, DOM, files and network out of the pure rooms', () => {
    expect(purityFaults(source)).toEqual([]);
  });

  it('never uses the type any', () => expect(anyAmong(modules)).toEqual([]));

  it('excuses nothing', () => {
    const judged = modules.filter(({ path }) => path !== 'tests/structure.test.ts');
    expect(excusesAmong(judged)).toEqual([]);
  });

  it('keeps files short and folders small', () => {
    expect(longAmong(source)).toEqual([]);
    expect(crowdedAmong(paths)).toEqual([]);
    const lengths = source.map(({ text }) => linesOf(text)).sort((a, b) => a - b);
    expect(lengths[Math.floor(lengths.length / 2)]).toBeLessThanOrEqual(mostMedianLines);
  });

  it('opens every file of a pure room with what it answers', () => {
    const bare = source.filter(
      ({ path, text }) =>
        /^src\/(ground|colour|finish|car|build|score)\//.test(path) && !text.startsWith('/**'),
    );
    expect(bare.map(({ path }) => path)).toEqual([]);
  });

  it('names no machine path and no registry host', () => {
    const texts = paths.filter((path) => /\.(tsx?|json|md|css|html|svg|csv)$|^\.ci\//.test(path));
    expect(leaksAmong(texts.map(read))).toEqual([]);
  });
});
