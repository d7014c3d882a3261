/** Marks of rounds: CRC-32 and base 32 against what others publish. */
import * as zlib from 'node:zlib';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { crc32 } from '../../src/opinion/crc.ts';
import { textFrom } from '../../src/opinion/link/layout.ts';
import { linkOf, roundFrom } from '../../src/opinion/link/link.ts';
import { markDigits, markOf, meantMark } from '../../src/opinion/mark.ts';
import { roundOf } from '../../src/opinion/round.ts';
import { demo, demoRound, roundWith } from './reply/arbitrary.ts';

/** CRC-32 as a shift register, bit by bit: the definition, without a table. */
function byDefinition(bytes: Uint8Array): number {
  let register = 0xffffffffn;
  for (const byte of bytes) {
    for (let bit = 0n; bit < 8n; bit++) {
      const isSet = ((BigInt(byte) >> bit) ^ register) & 1n;
      register = (register >> 1n) ^ (isSet === 1n ? 0xedb88320n : 0n);
    }
  }
  return Number(register ^ 0xffffffffn);
}

describe('CRC-32', () => {
  it('of the nine digits is the check value of the published catalogues, CBF43926', () => {
    expect(crc32('123456789')).toBe(0xcbf43926);
  });

  it('is what gzip writes at the end of a file, for any bytes', () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 300 }), (bytes) => {
        const trailer = zlib.gzipSync(bytes).subarray(-8).readUInt32LE(0);
        expect(crc32(bytes)).toBe(trailer);
        expect(crc32(bytes)).toBe(byDefinition(bytes));
      }),
      { seed: 3309, numRuns: 300 },
    );
  });
});

describe('the mark of a round', () => {
  it('is four digits of base 32 without I, L, O and U, the upper 20 bits of the CRC', () => {
    // The alphabet of Crockford's base 32: digits, then letters without those four.
    const letters = [...'ABCDEFGHIJKLMNOPQRSTUVWXYZ'].filter((one) => !'ILOU'.includes(one));
    expect(markDigits).toBe(`0123456789${letters.join('')}`);
    const value = [...markOf(demoRound)].reduce(
      (sum, one) => sum * 32 + markDigits.indexOf(one),
      0,
    );
    expect(markOf(demoRound)).toHaveLength(4);
    expect(value).toBe(Math.floor(crc32(textFrom(demoRound)) / 2 ** 12));
  });

  it('is the same for builder and viewer, whose round came through a link', () => {
    for (const round of [demoRound, roundOf(demo), roundOf(demo, { withStory: true })]) {
      expect(markOf(roundFrom(linkOf(round)))).toBe(markOf(round));
    }
  });

  it('is the same for the same question and another for another', () => {
    expect(markOf(roundOf(demoRound.build, { parts: demoRound.asks }))).toBe(markOf(demoRound));
    const marks = [demoRound, roundOf(demo), roundWith(2), roundWith(3, 1), roundWith(3, 2)];
    expect(new Set(marks.map(markOf)).size).toBe(marks.length);
  });

  it('is understood as it was meant, however it was typed', () => {
    expect(meantMark('oIl7')).toBe('0117');
  });
});
