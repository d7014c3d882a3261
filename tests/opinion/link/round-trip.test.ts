/** Whatever can be asked fits in a link and comes back as it was (properties, fixed seeds). */
import { deflateRawSync, inflateRawSync } from 'node:zlib';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { assignmentOf, finishesByRef } from '../../../src/build/build.ts';
import { buildFrom } from '../../../src/build/read/document.ts';
import { appearanceOf } from '../../../src/finish/appearance.ts';
import { bytesOf, charactersOf } from '../../../src/opinion/link/base64.ts';
import { bodyIn, enveloped } from '../../../src/opinion/link/envelope.ts';
import { roundIn, textFrom } from '../../../src/opinion/link/layout.ts';
import { addressOf, linkOf, roundFrom } from '../../../src/opinion/link/link.ts';
import { dictionary } from '../../../src/opinion/link/words/first.ts';
import { lettersIn, roundOf } from '../../../src/opinion/round.ts';
import { anyBuild, anyRound, demo, demoRound } from './rounds.ts';

const all = { seed: 20311126, numRuns: 150 };

describe('A link', () => {
  it('gives back the round it was made of', () => {
    fc.assert(
      fc.property(anyRound, (round) => {
        expect(roundFrom(linkOf(round))).toEqual(round);
      }),
      all,
    );
  });

  it('has only characters that no address escapes (RFC 3986, section 2.3)', () => {
    fc.assert(
      fc.property(anyRound, (round) => {
        expect(linkOf(round)).toMatch(/^[A-Za-z0-9_-]+$/);
      }),
      all,
    );
    expect(addressOf('https://example.org/car/', demoRound)).toBe(
      new URL(`#${linkOf(demoRound)}`, 'https://example.org/car/round.html').href,
    );
  });

  it('is one for one question: the round of a round’s build is that round, with that link', () => {
    fc.assert(
      fc.property(anyRound, (round) => {
        const again = roundOf(round.build, { parts: round.asks, withStory: true });
        expect(again).toEqual(round);
        expect(linkOf(again)).toBe(linkOf(round));
        // A round’s build is a build like any other.
        expect(buildFrom(JSON.parse(JSON.stringify(round.build)))).toEqual(round.build);
      }),
      all,
    );
  });

  it('tells nothing but what is seen: stock, notes, rules and names of alternatives stay at home', () => {
    const text = textFrom(roundOf(demo));
    for (const { name, note = '' } of demo.alternatives) {
      for (const kept of [name, note]) expect(text).not.toContain(kept);
    }
    for (const { note, bottle } of demo.finishes) {
      if (note !== undefined) expect(text).not.toContain(note);
      if (bottle !== undefined) expect(text).not.toContain(`${bottle.id}"`);
    }
    expect(text).not.toContain(demo.story);
  });

  it('shows every part as the builder sees it, closer than any eye can tell', () => {
    // Lab of a spectrum is told to a tenth, other figures to a hundredth: each of L, a and b is off
    // by 0.05 at most, so the Euclidean distance by 0.09.
    fc.assert(
      fc.property(anyBuild, (build) => {
        const round = roundOf(build);
        const light = build.viewing.light;
        const [sent, kept] = [finishesByRef(round.build), finishesByRef(build)];
        round.build.alternatives.forEach((alternative, at) => {
          const ours = [...assignmentOf(build, build.alternatives[at]!).values()];
          [...assignmentOf(round.build, alternative).values()].forEach((ref, k) => {
            const one = appearanceOf(sent.get(ref)!, light);
            const other = appearanceOf(kept.get(ours[k]!)!, light);
            expect(
              Math.hypot(...one.lab.map((value, axis) => value - other.lab[axis]!)),
            ).toBeLessThan(0.1);
            expect(Math.abs(one.gloss60 - other.gloss60)).toBeLessThan(0.006);
          });
        });
      }),
      { ...all, numRuns: 40 },
    );
  });

  it('is unpacked by another deflate, and one that another packed opens (Node’s zlib)', () => {
    const known = Buffer.from(dictionary);
    fc.assert(
      fc.property(anyRound, (round) => {
        const text = textFrom(round);
        const bytes = bytesOf(bodyIn(linkOf(round)));
        expect(inflateRawSync(bytes, { dictionary: known }).toString()).toBe(text);
        const other = charactersOf(deflateRawSync(text, { dictionary: known }));
        expect(roundFrom(enveloped(other))).toEqual(round);
      }),
      all,
    );
  });

  it('takes at most 600 characters for the demo with its three alternatives', () => {
    const round = roundOf(demo);
    expect(lettersIn(round)).toEqual(['A', 'B', 'C']);
    expect(linkOf(round).length).toBeLessThanOrEqual(600);
  });

  it('owes that to no figure of the demo: its dictionary holds names, and next to no numbers', () => {
    for (const { colour } of demo.finishes) {
      if ('lab' in colour) expect(dictionary).not.toContain(colour.lab.join(','));
    }
  });

  it('keeps letters single and different, whatever is asked about', () => {
    const many = Array.from({ length: 40 }, (_, at) => ({
      ...demo.alternatives[at % 3]!,
      id: `i-${at}`,
    }));
    const late = roundOf(
      { ...demo, alternatives: many },
      { alternatives: ['i-3', 'i-30', 'i-39'] },
    );
    expect(lettersIn(late)).toEqual(['A', 'B', 'C']);
    expect(lettersIn(roundOf({ ...demo, alternatives: many }))).toHaveLength(26);
    // Taken into a viewer’s own copy, one thrown away and one added: places count again.
    const [first, ...kept] = demoRound.build.alternatives;
    const own = {
      ...demoRound.build,
      alternatives: [...kept, { ...first!, id: 'mine', name: 'Mine' }],
    };
    expect(lettersIn(roundOf(own))).toEqual(['A', 'B', 'C']);
  });

  it('of nothing to choose from is still a round', () => {
    const none = roundOf(demo, { alternatives: [] });
    expect(none.build.alternatives).toEqual([]);
    expect(none.build.parts).toHaveLength(demo.parts.length);
  });

  it('reads only what it would write', () => {
    const text = textFrom(demoRound);
    expect(roundIn(text)).toEqual(demoRound);
    for (const other of [
      ` ${text}`,
      text.replace('24', '24.0'),
      text.replace(',0,', ',-0,'),
      text.replace('Body', '\\u0042ody'),
    ]) {
      expect(other).not.toBe(text);
      expect(() => roundIn(other)).toThrow('the link');
    }
  });
});
