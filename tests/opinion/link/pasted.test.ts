/**
 * What pasting does to a link: it opens all the same, or says why not. What mail, chats and editors
 * do is common practice, no source, save where a standard is named.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addressOf, LinkError, linkOf, roundFrom } from '../../../src/opinion/link/link.ts';
import { roundOf } from '../../../src/opinion/round.ts';
import { demo, demoRound } from '../reply/arbitrary.ts';

const link = linkOf(demoRound);
const address = addressOf('https://example.org/car/', demoRound);
const opens = (pasted: string) => expect(roundFrom(pasted), pasted.slice(0, 60)).toEqual(demoRound);

/** A text broken into lines of so many characters. */
const wrapped = (text: string, width: number, between: string): string =>
  (text.match(new RegExp(`.{1,${width}}`, 'gs')) ?? []).join(between);

describe('a pasted link opens', () => {
  it.each([
    ['itself', link],
    ['as a fragment', `#${link}`],
    ['as an address', address],
    ['of another host and page', `http://localhost:8080/x/y/?lang=en#${link}`],
    ['as a file', `file:///home/me/round.html#${link}`],
    ['with spaces and line ends around', `  \t${address}\r\n\n`],
    ['of the bench, with the letter chosen', `https://example.org/index.html#start-B-${link}`],
    ['of the bench, with no letter chosen', `https://example.org/index.html#start-0-${link}`],
  ])('%s', (_, pasted) => opens(pasted));

  it.each(
    ['""', "''", '“”', '„“', '‘’', '«»', '‹›', '``', '<>', '()', '[]', '{}', '**', '||'].map(
      (pair) => [pair],
    ),
  )('between %s', (pair) => {
    opens(`${pair[0]}${address}${pair[1]}`);
    opens(`${pair[0]}${link}${pair[1]}`);
    opens(`look ${pair[0]}${address}${pair[1]} here`);
  });

  it.each([
    ['.'],
    [','],
    [';'],
    [':'],
    ['!'],
    ['?'],
    [')'],
    ['>'],
    [').'],
    ['>.'],
    ['”.'],
    ['…'],
    ['/'],
  ])('with %s behind it', (sign) => {
    opens(address + sign);
    opens(link + sign);
    opens(`${address}${sign} Thanks!`);
  });

  it.each([
    ['words before', `Which one do you like best: ${address}`],
    ['words around', `look: ${address} thanks`],
    ['words on other lines', `Hello all,\n\n${address}\n\nThanks,\nthe builder`],
    ['a tag before, which is no address', `#carmodel #paint ${address} what do you think?`],
    ['a tag behind', `${address} #carmodel`],
    ['no address, in words', `the code is ${link} I think`],
    ['Markdown', `see [the round](${address}) please`],
    ['Markdown with a title', `[the round](${address} "Which one?")`],
    ['Markdown with angle brackets', `[the round](<${address}>)`],
    ['HTML', `<a href="${address}">the round</a>`],
    ['HTML in single quotes', `<a href='${address}'>the round</a>`],
    ['the address twice', `<a href="${address}">${address}</a>`],
    ['a cut one shown, the whole one linked', `[${address.slice(0, 60)}…](${address})`],
  ])('in %s', (_, pasted) => opens(pasted));

  it('broken over lines at any width, quoted or not', () => {
    for (const width of [20, 60, 72, 76, 78]) {
      for (const between of ['\n', '\r\n', '\n> ', '\n>> ', '\r\n> > ', ' ', '\n    ', '=\r\n']) {
        const quote = between.trimStart().startsWith('>') ? between.trimStart() : '';
        opens(quote + wrapped(address, width, between));
        opens(quote + wrapped(link, width, between));
      }
    }
  });

  it('with marks without width in it', () => {
    for (const mark of [
      '\u200b',
      '\u200c',
      '\u200d',
      '\u2060',
      '\ufeff',
      '\u00ad',
      '\u200e',
      '\u202a',
    ]) {
      opens(mark + address + mark);
      opens(wrapped(address, 40, mark));
    }
  });

  it('with its characters escaped (RFC 3986, section 2.1)', () => {
    opens(address.replaceAll('-', '%2D').replaceAll('_', '%5F'));
    opens(address.replace('#', '%23'));
    opens(encodeURIComponent(address));
    opens(`https://example.org/away?to=${encodeURIComponent(address)}`);
  });

  it('with the ampersand of an address written as HTML', () => {
    opens(`https://example.org/round.html?a=1&amp;b=2#${link}`);
    opens(`&lt;${address}&gt;`);
    opens(`&quot;${address}&quot;`);
  });
});

describe('a pasted text', () => {
  it('with no link in it says so', () => {
    for (const text of ['', 'hello', 'What do you think of the mirrors?', 'https://example.org/']) {
      expect(() => roundFrom(text)).toThrow(LinkError);
    }
  });

  it('never makes one link of two', () => {
    const other = linkOf(
      roundOf(demo, { alternatives: demo.alternatives.slice(0, 2).map(({ id }) => id) }),
    );
    // The first whole one counts.
    opens(`${address}\nhttps://example.org/round.html#${other}`);
    // One glued to another is no link at all.
    expect(() => roundFrom(link + other)).toThrow(LinkError);
  });

  it('that is anything at all is a round or a link error, within the same words around', () => {
    fc.assert(
      fc.property(
        fc.string({ unit: 'binary', maxLength: 30 }),
        fc.string({ unit: 'binary', maxLength: 30 }),
        (before, after) => {
          try {
            expect(roundFrom(before + address + after)).toEqual(demoRound);
          } catch (error) {
            expect(error).toBeInstanceOf(LinkError);
          }
        },
      ),
      { seed: 1126, numRuns: 300 },
    );
  });

  it('of millions of characters is refused soon, however much looks like links', () => {
    for (const text of [
      '#'.repeat(2_000_000),
      `${link.slice(0, 6)} `.repeat(200_000),
      '%41'.repeat(500_000),
      '> '.repeat(500_000),
      '='.repeat(1_000_000),
    ]) {
      expect(() => roundFrom(text)).toThrow(LinkError);
    }
  });
});
