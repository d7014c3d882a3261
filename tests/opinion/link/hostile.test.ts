/**
 * Links made to harm, sealed as they should be: refused as unreadable, within bounds, or shown as
 * text. Streams are made with Node’s zlib, or by hand from [RFC1951]; no clock is asked, sizes are.
 */
import { deflateRawSync } from 'node:zlib';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bytesOf, charactersOf } from '../../../src/opinion/link/base64.ts';
import { bodyIn, enveloped } from '../../../src/opinion/link/envelope.ts';
import { textFrom } from '../../../src/opinion/link/layout.ts';
import { LinkError, linkOf, roundFrom } from '../../../src/opinion/link/link.ts';
import { longestBody, mostText, unpacked } from '../../../src/opinion/link/pack.ts';
import { dictionary } from '../../../src/opinion/link/words/first.ts';
import { demoRound } from '../reply/arbitrary.ts';

const known = Buffer.from(dictionary);
const packedBytes = (text: string | Uint8Array): Uint8Array =>
  deflateRawSync(text, { level: 9, dictionary: known });
const sealedBytes = (bytes: Uint8Array): string => enveloped(charactersOf(bytes));
const sealed = (text: string): string => sealedBytes(packedBytes(text));

function expectUnreadable(link: string): void {
  let told: unknown;
  try {
    roundFrom(link);
  } catch (error) {
    told = error;
  }
  expect(told).toBeInstanceOf(LinkError);
  expect(told).toMatchObject({ fault: 'unreadable' });
}

const text = textFrom(demoRound);
type Fields = unknown[];
const fields = (): Fields => JSON.parse(text);
/** The demo's text with something else in one field. */
const withField = (at: number, value: unknown): string => JSON.stringify(fields().with(at, value));

describe('a stream', () => {
  it('that would unpack to hundreds of megabytes is given up at the bound', () => {
    for (const size of [mostText + 1, 2_000_000, 40_000_000]) {
      expectUnreadable(sealed('0'.repeat(size)));
    }
    // The same as one long text in the list, and as one number.
    expectUnreadable(sealed(`["${'a'.repeat(30_000_000)}"]`));
    // Several hundred megabytes take more characters than any link may have.
    const huge = packedBytes(Buffer.alloc(300_000_000, 48));
    expect(charactersOf(huge).length).toBeGreaterThan(longestBody);
    expect(() => roundFrom(sealedBytes(huge))).toThrow(/more than any link has/);
  });

  it('gives out no more than the bound and one slice of it', () => {
    // Deflate makes at most 1,032 bytes of one (zlib’s Technical Details, from memory).
    const bytes = packedBytes('0'.repeat(40_000_000));
    expect(bytes.length).toBeGreaterThan(mostText / 1032);
    expect(() => unpacked(charactersOf(bytes))).toThrow(/far too much/);
  });

  it('of just as much as allowed is unpacked', () => {
    const most = `"${'é'.repeat(1000)}${'0'.repeat(mostText - 2002)}"`;
    expect(unpacked(charactersOf(packedBytes(most)))).toBe(most);
  });

  it('cut anywhere is refused, though sealed', () => {
    const bytes = bytesOf(bodyIn(linkOf(demoRound)));
    for (let kept = 0; kept < bytes.length; kept++)
      expectUnreadable(sealedBytes(bytes.subarray(0, kept)));
  });

  it('with anything behind its end is no second link to the same round', () => {
    const bytes = bytesOf(bodyIn(linkOf(demoRound)));
    for (const more of [[0], [0, 0, 0], [0x61], [...bytes]]) {
      expectUnreadable(sealedBytes(Uint8Array.of(...bytes, ...more)));
    }
    // Characters that are no whole byte, and bits that stand for none.
    const body = bodyIn(linkOf(demoRound));
    expectUnreadable(enveloped(`${body}A`));
    expectUnreadable(enveloped(`${body}_`));
  });

  it('of blocks that are no blocks is refused (RFC 1951, section 3.2.3)', () => {
    // Block type 3 is reserved; a stored block whose length and complement disagree.
    expectUnreadable(sealedBytes(Uint8Array.of(0b111)));
    expectUnreadable(sealedBytes(Uint8Array.of(1, 5, 0, 0, 0, 1, 2, 3, 4, 5)));
    // Stored blocks of nothing, without an end.
    expectUnreadable(sealedBytes(new Uint8Array(10_000)));
    expectUnreadable(sealedBytes(new Uint8Array(0)));
  });

  it('that is not UTF-8 is refused (RFC 3629, section 3)', () => {
    for (const bad of [
      [0xff],
      [0xc0, 0x80],
      [0xed, 0xa0, 0x80],
      [0xf5, 0x80, 0x80, 0x80],
      [0xe2, 0x82],
    ]) {
      const bytes = Buffer.from(text.replace('Body', '~~~~'));
      const at = bytes.indexOf('~~~~');
      const spoiled = Buffer.concat([
        bytes.subarray(0, at),
        Uint8Array.from(bad),
        bytes.subarray(at + 4),
      ]);
      expectUnreadable(sealedBytes(packedBytes(spoiled)));
    }
    // A byte order mark is a character too many.
    expectUnreadable(sealed(`\ufeff${text}`));
  });

  it('of any bytes at all is refused', () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 200 }), (bytes) => {
        expectUnreadable(sealedBytes(bytes));
        expectUnreadable(sealedBytes(packedBytes(bytes)));
      }),
      { seed: 1951, numRuns: 300 },
    );
  });
});

describe('a text', () => {
  it('that is no round is refused', () => {
    for (const other of [
      '',
      ' ',
      'null',
      '0',
      '{}',
      '[]',
      '[[]]',
      '"round"',
      '{"length":14}',
      'undefined',
      '[1,2',
      '\u0000',
    ]) {
      expectUnreadable(sealed(other));
    }
  });

  it('nested thousands deep is refused', () => {
    for (const depth of [50, 5000, 100_000]) {
      expectUnreadable(sealed('['.repeat(depth) + ']'.repeat(depth)));
      expectUnreadable(sealed(`${'{"a":'.repeat(depth)}0${'}'.repeat(depth)}`));
      const nested: unknown = JSON.parse('['.repeat(50) + ']'.repeat(50));
      for (const at of fields().keys()) expectUnreadable(sealed(withField(at, nested)));
    }
  });

  it('with any field of another kind, missing, or one more is refused', () => {
    const all = fields();
    for (const at of all.keys()) {
      for (const other of [null, true, {}, -1, 1e300, 0.5, '__proto__', ['x'], [[]], [null]]) {
        if (JSON.stringify(all[at]) === JSON.stringify(other)) continue;
        // A distance or a scale of half a unit is one, only not that of the demo.
        if (other === 0.5 && at === 3) continue;
        // A name may be any text.
        if (typeof other === 'string' && at < 2) continue;
        expectUnreadable(sealed(withField(at, other)));
      }
      expectUnreadable(sealed(JSON.stringify(all.toSpliced(at, 1))));
    }
    expectUnreadable(sealed(JSON.stringify([...all, []])));
    expectUnreadable(sealed(JSON.stringify([...all, 0])));
  });

  it('with numbers written as texts, or otherwise than they are, is refused', () => {
    for (const at of [3, 4, 5]) expectUnreadable(sealed(withField(at, String(fields()[at]))));
    for (const [from, to] of [
      [',24,', ',24.0,'],
      [',24,', ',2.4e1,'],
      [',24,', ',024,'],
      [',24,', ',+24,'],
      [',24,', ',1e999,'],
      [',24,', ',-0,'],
      [',24,', ', 24,'],
      [',24,', ',24.001,'],
    ] as const) {
      expect(text).toContain(from);
      expectUnreadable(sealed(text.replace(from, to)));
    }
  });

  it('of huge counts is refused', () => {
    const many = 40_000;
    expectUnreadable(sealed(withField(6, Array(many).fill('a'))));
    expectUnreadable(sealed(withField(7, Array(many).fill(0))));
    expectUnreadable(sealed(withField(8, 'A'.repeat(many))));
    expectUnreadable(sealed(withField(9, Array(many).fill(0))));
    expectUnreadable(sealed(withField(10, Array(many).fill('a'))));
    expectUnreadable(sealed(withField(13, Array(many).fill(0))));
    // Ids of parts that all have one name take a number each.
    const same = Array.from({ length: 20_000 }, () => ['a', '']).flat();
    const round = fields().with(6, same).with(7, Array(20_000).fill(0));
    expectUnreadable(sealed(JSON.stringify(round)));
    // Evenly spaced bands without end, or that go nowhere.
    for (const grid of [
      [400, 0],
      [400, -10],
      [400, 1e308],
      [1e308, 1e308],
    ]) {
      const looks = fields()[12] as unknown[];
      expectUnreadable(sealed(withField(12, [[grid, Array(5000).fill(0.5)], ...looks.slice(3)])));
    }
  });

  it('that hides or turns what stands around it is refused', () => {
    for (const mark of ['\u202e', '\u2066', '\u0000', '\u001b[31m', '\u2028', '\ufeff', '\u0085']) {
      expectUnreadable(sealed(withField(0, `Name${mark}`)));
      expectUnreadable(sealed(withField(1, `Story${mark}`)));
      expectUnreadable(sealed(withField(6, (fields()[6] as string[]).with(0, `Body${mark}`))));
      expectUnreadable(sealed(withField(10, (fields()[10] as string[]).with(0, `Red${mark}`))));
    }
    // Half a character, which JSON can escape.
    expectUnreadable(sealed(text.replace('Body', '\\ud83d')));
  });

  it('is what it says: markup and names of the language’s own are names like any other', () => {
    for (const name of [
      '<img src=x onerror=alert(1)>',
      '__proto__',
      'constructor',
      'toString',
      '"],[',
      '\\',
    ]) {
      for (const changed of [
        withField(0, name),
        withField(10, (fields()[10] as string[]).with(0, name)),
      ]) {
        const round = roundFrom(sealed(changed));
        expect(textFrom(round)).toBe(changed);
        expect([round.build.name, round.build.finishes[0]!.name]).toContain(name);
      }
    }
    expect(Object.keys(Object.prototype)).toEqual([]);
  });
});
