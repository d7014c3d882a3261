/** Every link that is made opens: what a link may not hold is left out when it is written. */
import { describe, expect, it } from 'vitest';
import { hasHidden } from '../../../src/finish/parse.ts';
import { textFrom } from '../../../src/opinion/link/layout.ts';
import { LinkError, linkOf, roundFrom } from '../../../src/opinion/link/link.ts';
import { roundOf } from '../../../src/opinion/round.ts';
import { sealed } from '../../fuzz/engine.ts';
import { demo, demoRound } from './rounds.ts';

const hiding = [
  '\u202eevil',
  'a\u0000b',
  '\u001b[31mred',
  '\u2066x',
  '\ufeffx',
  'a\u2028b',
  'x\ud800',
];

describe('A link', () => {
  it('is written without what hides or turns the text around it, and opens', () => {
    for (const name of hiding) {
      const built = {
        ...demo,
        name,
        story: name,
        parts: demo.parts.map((part) => ({ ...part, name })),
        finishes: demo.finishes.map((finish) => ({ ...finish, name })),
      };
      const round = roundOf(built, { withStory: true });
      expect(hasHidden(textFrom(round))).toBe(false);
      expect(roundFrom(linkOf(round))).toEqual(round);
    }
  });

  it('names what has nothing but such characters', () => {
    const blank = roundOf({ ...demo, name: '\u202e' });
    expect(roundFrom(linkOf(blank)).build.name).toBe('Unnamed');
  });

  it('keeps names of markup and of the language itself as text', () => {
    for (const name of ['<img src=x onerror=alert(1)>', '__proto__', 'constructor', '"],["']) {
      const parts = demo.parts.map((part) => ({ ...part, name }));
      const round = roundOf({ ...demo, name, parts });
      const back = roundFrom(linkOf(round));
      expect(back).toEqual(round);
      expect(back.build.parts.map((part) => part.name)).toEqual(parts.map(() => name));
    }
  });
});

describe('Lists within lists, thousands deep', () => {
  const deep = `${'['.repeat(60_000)}${']'.repeat(60_000)}`;
  const fields = (JSON.parse(textFrom(demoRound)) as unknown[]).map((one) => JSON.stringify(one));

  it.each(fields.map((_, at) => at))('are refused in field %i of a link', (at) => {
    for (const value of [deep, `[${deep}]`, `[[50,${deep},1,1],1]`, `[[[400,10],${deep}],1]`]) {
      const text = `[${fields.with(at, value).join(',')}]`;
      let told: unknown;
      try {
        roundFrom(sealed(text));
      } catch (error) {
        told = error;
      }
      expect(told).toBeInstanceOf(LinkError);
      expect(told).toMatchObject({ fault: 'unreadable' });
    }
  });
});
