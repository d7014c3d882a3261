/** A browser is found by name, by path and by platform; a wrong path is never papered over. */
import { mkdirSync, mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { delimiter, join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { findBrowser } from './find.ts';

const folder = mkdtempSync(join(tmpdir(), 'testspoon-find-'));
const made = (...steps: string[]): string => {
  const path = join(folder, ...steps);
  mkdirSync(join(path, '..'), { recursive: true });
  writeFileSync(path, '');
  return path;
};

describe('the browser for the journeys', () => {
  it('is the one that BROWSER_PATH names, or none where that is wrong', () => {
    const own = made('own', 'browser');
    const edge = made('bin', 'microsoft-edge');
    const PATH = join(edge, '..');
    expect(findBrowser({ PATH, BROWSER_PATH: own }, 'linux')).toBe(own);
    expect(findBrowser({ PATH, BROWSER_PATH: join(folder, 'gone') }, 'linux')).toBeUndefined();
  });

  it('is Chromium before Chrome before Edge, wherever they stand on the search path', () => {
    const edge = made('first', 'microsoft-edge');
    const chrome = made('second', 'google-chrome');
    const PATH = [join(edge, '..'), join(chrome, '..')].join(delimiter);
    expect(findBrowser({ PATH }, 'linux')).toBe(chrome);
    const chromium = made('second', 'chromium');
    expect(findBrowser({ PATH }, 'linux')).toBe(chromium);
  });

  it('is found where Windows keeps it, and a folder of that name is no browser', () => {
    const edge = made('programs', 'Microsoft', 'Edge', 'Application', 'msedge.exe');
    expect(findBrowser({ PATH: '', PROGRAMFILES: join(folder, 'programs') }, 'win32')).toBe(edge);
    mkdirSync(join(folder, 'third', 'chromium'), { recursive: true });
    const PATH = join(folder, 'third');
    expect(findBrowser({ PATH, PROGRAMFILES: PATH }, 'win32')).toBeUndefined();
  });
});
