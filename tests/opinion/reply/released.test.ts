/**
 * Every reply ever released is read as it was meant, by every later version. Where this fails, the
 * reader must learn the old form again; the files are never changed.
 */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { roundFrom } from '../../../src/opinion/link/link.ts';
import { isCounted, repliesIn } from '../../../src/opinion/reply/read.ts';
import { answers1 } from '../released/answers-1.ts';

describe('replies released', () => {
  it('in form 1 are read as they were meant', () => {
    const file = readFileSync(new URL('../released/replies-1.txt', import.meta.url), 'utf8');
    const [link = '', ...thread] = file.split('\n');
    const found = repliesIn(thread.join('\n'), roundFrom(link));
    expect(found.filter(isCounted).map(({ answer }) => answer)).toEqual(answers1);
    expect(found).toHaveLength(answers1.length);
    expect(found.some(({ code }) => /-K\w*-/.test(code))).toBe(true);
    expect(found.every((one) => isCounted(one) && one.isOpened)).toBe(true);
  });
});
