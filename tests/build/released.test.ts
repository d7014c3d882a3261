/** Build files of every released version still open: what was written once is never lost. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { buildVersion } from '../../src/build/build.ts';
import { parseBuild, textOf } from '../../src/build/file.ts';

const released = (version: number): string =>
  readFileSync(new URL(`./released/version-${version}.json`, import.meta.url), 'utf8');

describe('a build file of a released version', () => {
  for (let version = 1; version < buildVersion; version++) {
    it(`${version} opens whole, with nothing changed but the version`, () => {
      const text = released(version);
      const before = JSON.parse(text) as { version: number };
      expect(before.version).toBe(version);
      const opened = JSON.parse(textOf(parseBuild(text))) as { parts: { absent?: boolean }[] };
      expect(opened.parts.every(({ absent }) => absent === false)).toBe(true);
      const parts = opened.parts.map(({ absent: _, ...part }) => part);
      expect({ ...opened, parts, version }).toEqual(before);
    });
  }
});
