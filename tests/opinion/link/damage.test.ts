/**
 * What is told of a link that was damaged on the way: the fault, how much arrived, never a guess.
 * The faults that must come follow from the damage, which is made here. Published values: base64url
 * of [RFC4648], section 10, with the alphabet of section 5 and without padding.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { alphabet, bytesOf, charactersOf, digits } from '../../../src/opinion/link/base64.ts';
import {
  bodyIn,
  enveloped,
  envelopeLength,
  lengthFrom,
} from '../../../src/opinion/link/envelope.ts';
import { LinkError, linkOf, roundFrom } from '../../../src/opinion/link/link.ts';
import { demoRound } from '../reply/arbitrary.ts';

const link = linkOf(demoRound);

/** The fault a pasted text is refused with; `opened` where it is not refused. */
function faultOf(pasted: string): LinkError | 'opened' {
  try {
    roundFrom(pasted);
  } catch (error) {
    if (error instanceof LinkError) return error;
    throw error;
  }
  return 'opened';
}
const kindOf = (pasted: string): string => {
  const fault = faultOf(pasted);
  return fault === 'opened' ? fault : fault.fault;
};

describe('characters of links', () => {
  it('are those of RFC 4648, section 10, without padding', () => {
    const vectors = {
      f: 'Zg',
      fo: 'Zm8',
      foo: 'Zm9v',
      foob: 'Zm9vYg',
      fooba: 'Zm9vYmE',
      foobar: 'Zm9vYmFy',
    };
    for (const [plain, written] of Object.entries(vectors)) {
      expect(charactersOf(Buffer.from(plain))).toBe(written);
      expect(Buffer.from(bytesOf(written)).toString()).toBe(plain);
    }
    // Section 5: - and _ stand for 62 and 63.
    expect(charactersOf(Uint8Array.of(0xfb, 0xff, 0xbf))).toBe('-_-_');
  });

  it('are those another implementation writes and reads (Node’s Buffer)', () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 80 }), (bytes) => {
        const written = Buffer.from(bytes).toString('base64url');
        expect(charactersOf(bytes)).toBe(written);
        expect([...bytesOf(written)]).toEqual([...bytes]);
      }),
      { seed: 4648, numRuns: 200 },
    );
  });
});

describe('a cut link', () => {
  it('says so at every place, and how much of it arrived', () => {
    for (let arrived = 1; arrived < link.length; arrived++) {
      const fault = faultOf(link.slice(0, arrived));
      if (fault === 'opened') throw new Error(`opened with ${arrived} characters`);
      expect(fault.fault).toBe('cut');
      expect(fault.arrived).toBe(arrived);
      // The first five characters tell how many there should be.
      expect(fault.of).toBe(arrived < 5 ? undefined : link.length);
      expect(fault.message).toContain(`${arrived} `);
    }
  });

  it('says so within its address too, whatever sign of shortening stands behind it', () => {
    for (const sign of ['', '…', '...', '… (more)']) {
      for (const arrived of [6, 100, link.length - 1]) {
        const address = `https://example.org/car/round.html#${link.slice(0, arrived)}${sign}`;
        expect(faultOf(address)).toMatchObject({ fault: 'cut', arrived, of: link.length });
      }
    }
  });

  it('of which nothing arrived is none', () => {
    for (const nothing of [
      '',
      '  \n',
      'https://example.org/car/round.html',
      'round.html#',
      'hello',
    ]) {
      expect(kindOf(nothing)).not.toBe('opened');
    }
    expect(kindOf('')).toBe('none');
    expect(kindOf('https://example.org/car/round.html#')).toBe('none');
  });
});

describe('an altered link', () => {
  const everyPlace = Array.from(link, (_, at) => at);

  it('is told with any one character changed', () => {
    for (const at of everyPlace) {
      const here = alphabet.indexOf(link[at]!);
      for (const step of [1, 2, 32, 63]) {
        const wrong = alphabet[(here + step) % 64]!;
        // A length that reads otherwise fails its own check, so that it is never told as cut.
        expect(kindOf(link.slice(0, at) + wrong + link.slice(at + 1))).toBe('altered');
      }
    }
  });

  it('is never opened with one character lost, doubled or put in, or two neighbours swapped', () => {
    for (const at of everyPlace) {
      const [before, here, after] = [link.slice(0, at), link[at]!, link.slice(at + 1)];
      expect(['cut', 'altered']).toContain(kindOf(before + after));
      expect(['cut', 'altered']).toContain(kindOf(before + here + here + after));
      expect(['cut', 'altered']).toContain(kindOf(`${before}A${here}${after}`));
      const next = after.slice(0, 1);
      if (next !== '' && next !== here) {
        expect(kindOf(before + next + here + after.slice(1))).toBe('altered');
      }
    }
  });

  it('is told where letters lost their case', () => {
    expect(kindOf(link.toLowerCase())).toBe('altered');
    expect(kindOf(link.toUpperCase())).toBe('altered');
  });
});

describe('a newer link', () => {
  it('is told as that once it is whole, and as cut or altered while it is not', () => {
    const body = bodyIn(link);
    for (const kind of ['2', '3', 'Z', 'A', '_']) {
      const newer = enveloped(body, kind);
      expect(faultOf(newer)).toMatchObject({ fault: 'newer', arrived: undefined });
      expect(kindOf(`https://example.org/round.html#${newer}`)).toBe('newer');
      expect(kindOf(newer.slice(0, -1))).toBe('cut');
      expect(
        kindOf(`${newer.slice(0, 30)}${newer[30] === 'A' ? 'B' : 'A'}${newer.slice(31)}`),
      ).toBe('altered');
    }
  });

  it('need not pack its body as this version does', () => {
    expect(kindOf(enveloped('', '2'))).toBe('newer');
    expect(kindOf(enveloped('A'.repeat(3000), '2'))).toBe('newer');
  });
});

describe('the beginning of a link', () => {
  it('tells its length, and no single wrong character in it passes', () => {
    fc.assert(
      fc.property(
        fc.nat({ max: 262_143 }),
        fc.nat({ max: 4 }),
        fc.integer({ min: 1, max: 63 }),
        (length, at, step) => {
          const head = `1${digits(length, 3)}`;
          const check = [...alphabet].filter(
            (one) => lengthFrom(head + one) === length + envelopeLength,
          );
          expect(check).toHaveLength(1);
          const whole = head + check[0]!;
          const wrong = alphabet[(alphabet.indexOf(whole[at]!) + step) % 64]!;
          expect(lengthFrom(whole.slice(0, at) + wrong + whole.slice(at + 1))).toBeUndefined();
        },
      ),
      { seed: 64, numRuns: 300 },
    );
  });
});
