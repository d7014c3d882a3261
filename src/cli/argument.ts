/**
 * Options that several commands take, read and checked in one place; a wrong one is a fault of
 * the command line and says what would be right.
 */
import { InvalidArgumentError, Option } from 'commander';
import { type LightId, lightIds } from '../colour/illuminant.ts';
import { harmless } from './draw/screen.ts';

/** Lights as builders know them. */
export const lightNames: Readonly<Record<LightId, string>> = {
  D65: 'average daylight (D65)',
  A: 'a filament lamp (A)',
  'LED-B3': 'a white LED (LED-B3)',
  D50: 'warm daylight (D50)',
  FL11: 'a three-band tube (FL11)',
};

/** `--light`, one of the five. */
export const lightOption = (what: string): Option =>
  new Option('--light <light>', what).choices(lightIds);

/** A reader of numbers from `low` to `high`. */
export const numberFrom =
  (low: number, high: number, unit: string, isWhole = false) =>
  (text: string): number => {
    const value = Number(text);
    const isNumber = /^[\d.]+$/.test(text) && (!isWhole || Number.isInteger(value));
    if (isNumber && value >= low && value <= high) return value;
    throw new InvalidArgumentError(
      `Give a ${isWhole ? 'whole ' : ''}number from ${low} to ${high}${unit}.`,
    );
  };

/** Reads a calendar date such as 2031-05-24. */
export function dateFrom(text: string): string {
  const date = new Date(`${text}T00:00:00Z`);
  const isDate = !Number.isNaN(date.valueOf()) && date.toISOString().slice(0, 10) === text;
  if (isDate) return text;
  throw new InvalidArgumentError('Give a calendar date like 2031-05-24.');
}

/** Today by this machine's calendar. */
export function today(now = new Date()): string {
  const two = (value: number): string => String(value).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

/** Writes a value as JSON on standard output; what could steer a terminal stands as `\\u`, which is JSON too. */
export const printJson = (value: unknown): void => {
  printLines(JSON.stringify(value, null, 2).split('\n').map(harmless));
};
/** Writes lines on standard output. */
export const printLines = (lines: readonly string[]): void => {
  process.stdout.write(`${lines.join('\n')}\n`);
};
