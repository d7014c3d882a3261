/**
 * Is every claim traceable? Each source key used in `src` or `models`, such as `[Sharma2005]`,
 * stands under Sources in DEVELOPERS.md with its full citation, and every key listed there is used.
 */
import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';

const root = fileURLToPath(new URL('..', import.meta.url));
const tracked = execFileSync('git', ['ls-files', '-co', '--exclude-standard', '-z'], { cwd: root })
  .toString()
  .split('\0');
const textOf = (path: string): string => readFileSync(root + path, 'utf8');

/** A name or body of standards, then a number: `[Stone2014]`, `[ISO2813]`, `[RFC4180]`, `[MPI]`. */
const key = /\[([A-Z][A-Za-z]+\d{2,5}|MPI)\]/g;
const comment = /\/\*[\s\S]*?\*\/|\/\/.*$/gm;

const keysIn = (text: string): string[] => [...text.matchAll(key)].map((match) => match[1] ?? '');
/** Keys in the comments of code; an array index such as `table[MPI]` is no citation. */
const keysUsedIn = (code: string): string[] => (code.match(comment) ?? []).flatMap(keysIn);
/** Keys that open an entry of the list of sources: `- [Key] citation`. */
const keysListedIn = (text: string): string[] => {
  const sources = text.split(/^## Sources$/m)[1]?.split(/^## /m)[0] ?? '';
  return [...sources.matchAll(/^- \*{0,2}\[([A-Za-z0-9]+)\]\*{0,2} \S.{20,}$/gm)].map(
    (match) => match[1] ?? '',
  );
};
const missingFrom = (have: readonly string[], wanted: readonly string[]): string[] =>
  [...new Set(wanted)].filter((one) => !have.includes(one)).sort();

const used = tracked
  .filter((path) => /^(src|models)\/.*\.tsx?$/.test(path))
  .flatMap((path) => keysUsedIn(textOf(path)));

describe('sources', () => {
  it('are read from comments and from the list, and gaps are seen both ways', () => {
    const code = '/** Thresholds. [Stone2014] */\nconst a = table[MPI]; // [MPI] and [ISO2813]';
    expect(keysUsedIn(code)).toEqual(['Stone2014', 'MPI', 'ISO2813']);
    const list = '# D\n## Sources\n- [MPI] Master Painters Institute, gloss levels.\n## Changes\n';
    expect(keysListedIn(list)).toEqual(['MPI']);
    expect(missingFrom(['MPI'], ['Stone2014', 'MPI'])).toEqual(['Stone2014']);
  });

  it('are cited at all', () => expect(new Set(used).size).toBeGreaterThan(8));

  it('stand in DEVELOPERS.md for every key the code uses', () => {
    expect(missingFrom(keysListedIn(textOf('DEVELOPERS.md')), used)).toEqual([]);
  });

  it('are all used by the code', () => {
    expect(missingFrom(used, keysListedIn(textOf('DEVELOPERS.md')))).toEqual([]);
  });

  it('are listed once each', () => {
    const listed = keysListedIn(textOf('DEVELOPERS.md'));
    expect(listed).toEqual([...new Set(listed)]);
  });
});
