/**
 * What does the list tell of a build? Taken from its document, whatever that is: of one that a newer
 * Testspoon has made, or that is damaged, as much as can be read.
 */
import { buildVersion } from '../../../build/build.ts';
import { cutText } from '../../../ground/id.ts';
import type { Card } from './database.ts';

type Fields = Readonly<Record<string, unknown>>;
const fieldsOf = (value: unknown): Fields =>
  typeof value === 'object' && value !== null ? (value as Fields) : {};

/** The card of a document. */
export function cardOf(key: string, document: unknown, changed: number, revision: number): Card {
  const { name, version, car, scale, parts } = fieldsOf(document);
  const open = (Array.isArray(parts) ? parts : [])
    .map(fieldsOf)
    .filter((part) => 'candidates' in part && part.absent !== true);
  return {
    key,
    name: typeof name === 'string' && name !== '' ? cutText(name) : 'Without a name',
    version: typeof version === 'number' ? version : undefined,
    car: typeof car === 'string' ? car : '',
    scale: typeof scale === 'number' ? scale : 0,
    openParts: open.length,
    changed,
    revision,
  };
}

/** Whether a newer Testspoon has made it. */
export const isNewer = ({ version }: Card): boolean =>
  version !== undefined && version > buildVersion;

/** A document as text for a file, just as it is kept. */
export const textOfDocument = (document: unknown): string =>
  typeof document === 'string' ? document : `${JSON.stringify(document, null, 2)}\n`;
