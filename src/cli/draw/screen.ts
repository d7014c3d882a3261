/**
 * What can this terminal show? Width in columns and colours, taken from the stream and the usual
 * variables: `NO_COLOR` and a stream that is no terminal mean plain text, `FORCE_COLOR` the
 * contrary, `COLUMNS` sets the width of what is piped.
 */
import { WriteStream } from 'node:tty';
import { styleText } from 'node:util';

export interface Screen {
  /** Columns that a line may take. */
  readonly width: number;
  /** Bold and dim are understood. */
  readonly hasStyle: boolean;
  /** Any sRGB colour can be shown as it is. */
  readonly hasTrueColour: boolean;
}

/** Narrower than this, lines run over rather than being broken into single words. */
const leastWidth = 24;
/** Wider than this, a line is hard to follow back to the next. */
const mostWidth = 140;
const usualWidth = 100;

/** The screen behind an output stream. */
export function screenOf(
  stream: { readonly isTTY?: boolean; readonly columns?: number },
  env: NodeJS.ProcessEnv = process.env,
): Screen {
  const columns = stream.columns ?? Number(env.COLUMNS);
  const asked = Number.isInteger(columns) && columns > 0 ? columns : usualWidth;
  const isForced = env.FORCE_COLOR !== undefined && env.FORCE_COLOR !== '0';
  const isPlain = isSet(env.NO_COLOR) || (stream.isTTY !== true && !isForced);
  const depth = isPlain ? 1 : WriteStream.prototype.getColorDepth(env);
  return {
    width: Math.min(mostWidth, Math.max(leastWidth, asked)),
    hasStyle: depth > 1,
    hasTrueColour: depth === 24,
  };
}

/** By convention any value counts, save an empty one. */
const isSet = (value: string | undefined): boolean => value !== undefined && value !== '';

type Style = 'bold' | 'dim';

/** `text` in a style where the screen has styles. */
export const styled = (screen: Screen, style: Style, text: string): string =>
  screen.hasStyle && text !== '' ? styleText(style, text, { validateStream: false }) : text;

// Escapes, other controls, and characters that turn the reading direction of what follows.
const unruly = /[\p{Cc}\p{Cs}\u061c\u200e\u200f\u2028\u2029\u202a-\u202e\u2066-\u2069\ufeff]/gu;

/** Text from outside with everything that could steer a terminal spelt out instead. */
export const harmless = (text: string): string =>
  text.replace(
    unruly,
    (character) => `\\u${character.codePointAt(0)!.toString(16).padStart(4, '0')}`,
  );
