/**
 * Links damaged at random: does one ever crash the reader, hold it up, or open as another round?
 *
 * Two kinds. Damaged outside, as on the way: characters flipped, inserted, deleted, swapped, cut, two
 * links spliced; such a link is refused, or opens as exactly the round it was made of. Damaged
 * inside, as by somebody who means it: the text or its packing is changed and sealed again with a
 * right checksum; such a link is refused, or opens as exactly the round that its text says, whose own
 * text is that text again. Deterministic: the same seed gives the same links.
 */
import { deflateRawSync } from 'node:zlib';
import { type Draw, drawFrom } from '../../src/ground/draw.ts';
import { alphabet, bytesOf, charactersOf } from '../../src/opinion/link/base64.ts';
import { bodyIn, enveloped } from '../../src/opinion/link/envelope.ts';
import { textFrom } from '../../src/opinion/link/layout.ts';
import { LinkError, linkOf, roundFrom } from '../../src/opinion/link/link.ts';
import { unpacked } from '../../src/opinion/link/pack.ts';
import { dictionary } from '../../src/opinion/link/words/first.ts';
import type { Round } from '../../src/opinion/round.ts';

/** How a link was damaged. */
export type Damage = 'flip' | 'insert' | 'delete' | 'swap' | 'cut' | 'splice' | 'text' | 'packing';
const damages: readonly Damage[] = [
  ...(['flip', 'insert', 'delete', 'swap', 'cut', 'splice', 'text', 'packing'] as const),
];

/** One link of the stock that damaged ones are made from. */
export interface Stock {
  readonly link: string;
  readonly text: string;
  readonly told: string;
}

/** What came of it. */
export interface Outcome {
  readonly links: number;
  /** How many were refused, by damage and fault. */
  readonly refused: Readonly<Record<string, Readonly<Record<string, number>>>>;
  /** How many opened as the round they were made of, nothing of meaning being changed. */
  readonly asSent: number;
  /** How many opened as exactly the round that their changed and sealed text says. */
  readonly asWritten: number;
  /** Longest time of one link, milliseconds. */
  readonly slowestMs: number;
  /** Whatever should never happen, with the link. */
  readonly failures: readonly string[];
}

const strangers = [...'#%.+/= \n"\'<>()…é漢\u200b\u202e\u0000'];
const known = Buffer.from(dictionary);

/** Links of rounds, to be damaged. */
export const stockOf = (rounds: readonly Round[]): readonly Stock[] =>
  rounds.map((round) => ({
    link: linkOf(round),
    text: textFrom(round),
    told: JSON.stringify(round),
  }));

/** Damages so many links. `now` gives milliseconds. */
export function fuzz(
  stock: readonly Stock[],
  count: number,
  seed: number,
  now: () => number,
): Outcome {
  const draw = drawFrom(seed);
  const refused: Record<string, Record<string, number>> = {};
  const failures: string[] = [];
  let [asSent, asWritten, slowestMs] = [0, 0, 0];
  for (let at = 0; at < count; at++) {
    const damage = damages[draw.below(damages.length)]!;
    const one = stock[draw.below(stock.length)]!;
    const { link, text } = damaged(damage, one, stock, draw);
    const start = now();
    try {
      const round = roundFrom(link);
      const told = JSON.stringify(round);
      const isInside = damage === 'text' || damage === 'packing';
      if (isInside && textFrom(round) === (text ?? unpacked(bodyIn(link)))) asWritten++;
      else if (stock.some((sent) => sent.told === told && isWithin(sent.link, link))) asSent++;
      else failures.push(`${damage}: opened as something else: ${link}`);
    } catch (error) {
      if (error instanceof LinkError) {
        const faults = refused[damage] ?? {};
        refused[damage] = { ...faults, [error.fault]: (faults[error.fault] ?? 0) + 1 };
      } else failures.push(`${damage}: ${String(error)}: ${link}`);
    }
    slowestMs = Math.max(slowestMs, now() - start);
  }
  return { links: count, refused, asSent, asWritten, slowestMs, failures };
}

/** Whether a link stands whole in a text, with nothing but what no link has in between. */
const isWithin = (link: string, text: string): boolean =>
  text.replace(/[^A-Za-z0-9_-]/g, '').includes(link);

/** A damaged link, and where it was damaged inside, the text in it. */
function damaged(
  damage: Damage,
  one: Stock,
  stock: readonly Stock[],
  draw: Draw,
): { link: string; text?: string } {
  switch (damage) {
    case 'text': {
      const text = changedText(one.text, draw);
      return { link: sealed(text), text };
    }
    case 'packing': {
      const bytes = bytesOf(bodyIn(one.link));
      for (let k = 1 + draw.below(4); k > 0; k--) {
        const at = draw.below(bytes.length);
        bytes[at] = bytes[at]! ^ (1 << draw.below(8));
      }
      return { link: enveloped(charactersOf(bytes)) };
    }
    case 'splice': {
      const other = stock[draw.below(stock.length)]!.link;
      return { link: one.link.slice(0, place(one.link, draw)) + other.slice(place(other, draw)) };
    }
    default: {
      let { link } = one;
      for (let k = draw.below(3) === 0 ? 1 + draw.below(6) : 1; k > 0; k--) {
        link = changed(damage, link, draw);
      }
      return { link };
    }
  }
}

const place = (text: string, draw: Draw): number => draw.below(text.length + 1);
const anyCharacter = (draw: Draw): string =>
  draw.below(8) === 0 ? strangers[draw.below(strangers.length)]! : alphabet[draw.below(64)]!;

function changed(damage: Damage, link: string, draw: Draw): string {
  const at = draw.below(Math.max(1, link.length));
  const [before, here, after] = [link.slice(0, at), link.slice(at, at + 1), link.slice(at + 1)];
  switch (damage) {
    case 'flip':
      return before + anyCharacter(draw) + after;
    case 'insert':
      return before + anyCharacter(draw) + here + after;
    case 'delete':
      return before + after.slice(draw.below(3) === 0 ? draw.below(40) : 0);
    case 'swap':
      return before + after.slice(0, 1) + here + after.slice(1);
    default:
      return draw.below(4) === 0 ? link.slice(at) : before;
  }
}

const pieces = [
  ...['0', '-1', '1e9', '1e999', '-0', '0.10', 'null', 'true', '[]', '{}', '""', '"A"', '[0,1]'],
  ...[
    '"\\u202e"',
    '"<b>"',
    '"__proto__"',
    '[[[]]]',
    '50',
    '"ffffff"',
    ',',
    ']',
    '[',
    '"',
    '\\u0000',
  ],
  ...[' ', '\n', '9007199254740993', '1E2', '"constructor"', '26', '200', '-16', '60', '999999'],
];

function changedText(text: string, draw: Draw): string {
  let now = text;
  for (let k = 1 + draw.below(3); k > 0; k--) {
    const tokens = now.match(/"(?:[^"\\]|\\.)*"|[^",[\]]+|./gs) ?? [];
    const at = draw.below(tokens.length);
    const other = tokens[draw.below(tokens.length)] ?? '';
    switch (draw.below(5)) {
      case 0:
        tokens[at] = pieces[draw.below(pieces.length)]!;
        break;
      case 1:
        tokens[at] = other;
        break;
      case 2:
        tokens.splice(at, 1 + draw.below(4));
        break;
      case 3:
        tokens.splice(at, 0, other, ',');
        break;
      default:
        tokens[at] = String(draw.below(400) - 20);
    }
    now = tokens.join('');
  }
  return now;
}

/** Packed by another library and sealed as it should be. */
export const sealed = (text: string): string =>
  enveloped(charactersOf(deflateRawSync(text, { level: 1, dictionary: known })));
