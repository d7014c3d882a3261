/** `testspoon replies`: a pasted thread counted on a terminal, and what is not counted told. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { answers1 } from '../opinion/released/answers-1.ts';
import { scratch, testspoon, written } from './run.ts';

const released = new URL('../opinion/released/replies-1.txt', import.meta.url);
const [link = '', ...lines] = readFileSync(released, 'utf8').split('\n');
const thread = lines.join('\n');
const folder = scratch();

describe('replies', () => {
  it('are counted by letter and part from a file', async () => {
    const file = written(folder, 'thread.txt', thread);
    const { status, out, err } = await testspoon(['replies', link, file]);
    expect([status, err]).toEqual([0, '']);
    // Counted by hand in the released answers: A twice, B three times, C twice, then three of each.
    expect(out).toMatch(/16 replies count\./);
    expect(out).toMatch(/^ {2}A +5 /m);
    expect(out).toMatch(/^ {2}B +6 /m);
    expect(out).toMatch(/^ {2}C +5 /m);
    expect(out).toContain('stripes: A 1, B 1, C 0');
    expect(out).toContain('Marigold on the mirrors, please!');
  });

  it('come from standard input as JSON, whole', async () => {
    const { status, out } = await testspoon(['replies', `<${link}>.`, '--json'], { input: thread });
    expect(status).toBe(0);
    const told = JSON.parse(out);
    expect(told).toMatchObject({
      letters: ['A', 'B', 'C'],
      counted: 16,
      counts: { A: 5, B: 6, C: 5 },
      setAside: [],
    });
    const fields = ({ letter, parts, pairs, words }: (typeof answers1)[number]) => ({
      letter,
      parts,
      pairs,
      words,
    });
    expect(told.replies.map(fields)).toEqual(answers1);
  });

  it('that are cut are told with their line, and nothing steers the terminal', async () => {
    const cut = `\u001b[31m\u202e@red\n${thread.slice(0, thread.lastIndexOf(']'))}`;
    const { status, out } = await testspoon(['replies', link, '-'], { input: cut });
    expect(status).toBe(0);
    expect(out).toMatch(/15 replies count, 1 not\./);
    expect(out).toContain('damaged');
    for (const steering of ['\u001b', '\u202e']) expect(out).not.toContain(steering);
  });

  it('that are not there are a fault of the input, a broken link too', async () => {
    const none = await testspoon(['replies', link], { input: 'B please' });
    expect(none.status).toBe(1);
    expect(none.err).toContain('no reply');
    const broken = await testspoon(['replies', link.slice(0, -9)], { input: thread });
    expect(broken.status).toBe(1);
    expect(broken.out).toBe('');
  });
});
