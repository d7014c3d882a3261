/**
 * Every link ever released opens for ever as what was asked: by every later version, whatever else
 * it writes. Where this fails, the reader must learn the old form again; the files never change.
 * In `link-1.txt` stand links one a line as version 1 wrote them, in `link-1.json` the rounds that
 * they were made from, in the same order: the demo, with parts asked, under a lamp, with odd names,
 * and with finishes of every sort.
 */
import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { roundFrom } from '../../../src/opinion/link/link.ts';
import { dictionary } from '../../../src/opinion/link/words/first.ts';
import type { Round } from '../../../src/opinion/round.ts';

const released = (name: string): string =>
  readFileSync(new URL(`../released/${name}`, import.meta.url), 'utf8');

describe('Links released', () => {
  it('in version 1 open as what was asked', () => {
    const links = released('link-1.txt').trimEnd().split('\n');
    const rounds: Round[] = JSON.parse(released('link-1.json'));
    expect(links.length).toBeGreaterThanOrEqual(5);
    expect(links.map((link) => roundFrom(link))).toEqual(rounds);
  });

  it('in version 1 rest on its dictionary, to the letter', () => {
    const digest = createHash('sha256').update(dictionary).digest('hex');
    expect(`${digest}\n`).toBe(released('dictionary-1.sha256'));
  });
});
