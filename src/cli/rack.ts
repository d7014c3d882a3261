/**
 * The rack a builder names: one that comes along, by its id, or a file, JSON or a table by content.
 */
import { basename } from 'node:path';
import { didYouMean } from '../build/nearest.ts';
import { type RackReading, rackFromText } from '../finish/rack/paste.ts';
import { parseRack } from '../finish/rack/rack.ts';
import { InputError, shown } from '../ground/problem.ts';
import { rackIds, shelfRack } from './shelf.ts';
import { sourceName, textFrom } from './source.ts';

/** The rack called `named`: an id of one that comes along, or a path. Throws `InputError`. */
export async function rackNamed(named: string): Promise<RackReading> {
  const known = shelfRack(named);
  if (known !== undefined) return { rack: known, problems: [], granted: [] };
  const looksLikePath = named === '-' || /[./\\]/.test(named);
  if (!looksLikePath) {
    const problem = {
      place: 'RACK',
      found: shown(named),
      expected: `one of ${rackIds.join(', ')}, or the path of a rack file`,
      mend: `Correct it.${didYouMean(named, rackIds)}`,
    };
    throw new InputError([problem], named);
  }
  return rackFrom(await textFrom(named), named);
}

/** The rack in the text of the file at `path`, JSON or a table. */
export function rackFrom(text: string, path: string): RackReading {
  const source = sourceName(path);
  if (isJson(text)) return { rack: parseRack(text, source), problems: [], granted: [] };
  const id = slugOf(basename(path).replace(/\.[^.]*$/, '')) || 'rack';
  try {
    return rackFromText(text, { id, name: id });
  } catch (error) {
    if (error instanceof InputError) throw new InputError(error.problems, source);
    throw error;
  }
}

/** Whether a text means to be JSON, by its first character. */
export const isJson = (text: string): boolean => /^\ufeff?\s*[[{"]/.test(text);

/** A name as an id: lower case, letters and digits joined by hyphens; may come out empty. */
export const slugOf = (name: string): string =>
  name
    .normalize('NFKD')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '')
    .slice(0, 60)
    .replace(/-+$/, '');
