/**
 * What comes in from outside: files chosen, dropped or pasted, and pasted text. Builds are opened,
 * racks are handed to the rack's own dialog, anything else is refused in plain words; of several
 * that come at once none is passed over. Whatever was open stays untouched until something could be
 * read whole, and one undo away after that.
 */
import { mostBuildBytes } from '../../build/file.ts';
import { InputError, type Problem } from '../../ground/problem.ts';
import { clear, useOverlay } from '../overlay/overlay.ts';
import { sayDone } from '../pieces/said.ts';
import type { Reading } from '../rack/files/reading.ts';
import { open } from '../store.ts';
import { type Refused, refusalsRead, tellRefused } from './refused.ts';
import { type FreshWork, workFrom } from './start.ts';

type Opened = FreshWork & { readonly key?: string };

let begun = 0;
let laidOut = 0;

/** Lays work out that was asked for in this turn, unless something asked for later lies there. */
async function layOut(turn: number, works: readonly Opened[]): Promise<boolean> {
  if (turn < laidOut || works.length === 0) return false;
  laidOut = turn;
  clear();
  for (const work of works) {
    open(work);
    // Only what has been drawn is kept.
    await new Promise((drawn) => setTimeout(drawn));
  }
  return true;
}

/** Opens work once it is there, or tells why not. A slow one gives way to what was asked for later. */
export async function openWhenRead(name: string, work: Promise<Opened>): Promise<boolean> {
  begun += 1;
  const turn = begun;
  try {
    return await layOut(turn, [await work]);
  } catch (error) {
    tellRefused([{ name, problems: problemsIn(error) }], true);
    return false;
  }
}

const problemsIn = (error: unknown): readonly Problem[] => {
  if (error instanceof InputError) return error.problems;
  const found = error instanceof Error ? error.message : 'an unknown fault';
  return [{ place: '', found, expected: 'a readable file', mend: 'Try again.' }];
};

/** What one file or text turned out to be. */
type Brought = { readonly work: FreshWork } | { readonly rack: Reading } | Refused;

/** Takes files: builds are opened, one undo step each; racks and what was refused come after. */
export const bringFiles = (files: readonly File[]): Promise<void> =>
  takeIn(files.map((file) => broughtBy(file.name, readFile(file))));

const pasted = 'What was pasted';

/** Takes text that was pasted or dropped, if it is a build or a rack; whether it was. */
export async function bringText(text: string): Promise<boolean> {
  if (/^\s*\{/.test(text)) {
    const isOurs = /^testspoon/.test(formatOf(text));
    if (isOurs) await takeIn([broughtBy(pasted, readText(text, pasted))]);
    return isOurs;
  }
  if (!/[\t;,].*\n/.test(text.slice(0, 2000))) return false;
  const { isTableOfFinishes } = await import('../rack/files/recognise.ts');
  const isTable = isTableOfFinishes(text);
  if (isTable) await takeIn([broughtBy(pasted, readRack(text, pasted))]);
  return isTable;
}

const broughtBy = (name: string, reading: Promise<Brought>): Promise<Brought> =>
  reading.catch((error: unknown) => ({ name, problems: problemsIn(error) }));

async function takeIn(coming: readonly Promise<Brought>[]): Promise<void> {
  begun += 1;
  const turn = begun;
  const brought = await Promise.all(coming);
  const works = brought.flatMap((one) => ('work' in one ? [one.work] : []));
  const racks = brought.flatMap((one) => ('rack' in one ? [one.rack] : []));
  const refused = brought.flatMap((one) => ('problems' in one ? [one] : []));
  const isOpened = await layOut(turn, works);
  const last = works.at(-1);
  if (isOpened && works.length > 1 && last !== undefined) {
    sayDone(`${last.build.name} lies on the bench. What came with it is under Builds.`);
  }
  const isAdding = useOverlay.getState().overlay?.kind === 'bring';
  if (racks.length > 0 || (isAdding && refused.length > 0)) {
    // One dialog tells of all: a refusal over it, or beneath it, would be in the way.
    const { showReadings } = await import('../rack/files/bring.ts');
    showReadings([...racks, ...[...refusalsRead(), ...refused].map(asReading)]);
  } else if (refused.length > 0) tellRefused(refused, !isOpened);
}

const asReading = ({ name, problems }: Refused): Reading => ({
  source: name,
  rack: undefined,
  problems,
  granted: [],
});

const isTable = ({ name, type }: File): boolean =>
  /\.(csv|tsv)$/i.test(name) || type === 'text/csv' || type === 'text/tab-separated-values';

async function readFile(file: File): Promise<Brought> {
  const kind = kindOf(file);
  if (kind !== undefined) {
    const mend =
      'Builds are files that Save has made, with a name that ends in .json. Colours can be typed ' +
      'in or pasted as a table, but are not read from pictures.';
    throw refusal(kind, 'a build, or a rack as JSON or CSV', mend, file.name);
  }
  if (file.size > mostBuildBytes) {
    const found = `${Math.ceil(file.size / 1e6)} MB`;
    const expected = `no more than ${mostBuildBytes / 1e6} MB`;
    throw refusal(found, expected, 'Check that this is the file you meant.', file.name);
  }
  if (!isTable(file)) return readText(await file.text(), file.name);
  // Spreadsheets save in letters of several kinds, which the rack's own reading knows.
  const { readRackFile } = await import('../rack/files/reading.ts');
  return { rack: await readRackFile(file) };
}

const refusal = (found: string, expected: string, mend: string, source: string): InputError =>
  new InputError([{ place: '', found, expected, mend }], source);

/** What a file is that holds no text of ours; undefined where it may. */
function kindOf({ name, type }: File): string | undefined {
  const ending = /\.([a-z0-9]+)$/i.exec(name)?.[1]?.toLowerCase() ?? '';
  const isPicture = /^(jpe?g|png|gif|webp|heic|avif|bmp|tiff?)$/.test(ending);
  if (isPicture || type.startsWith('image/')) return 'a picture';
  if (type.startsWith('video/') || type.startsWith('audio/')) return 'a recording';
  if (['pdf', 'doc', 'docx', 'odt'].includes(ending)) return 'a document';
  if (['xls', 'xlsx', 'ods', 'numbers'].includes(ending)) {
    return 'a spreadsheet of its program’s own kind';
  }
  if (['zip', '7z', 'rar', 'gz'].includes(ending)) return 'a packed folder';
  return ['glb', 'gltf', 'obj', 'stl', 'step'].includes(ending) ? 'a 3D model' : undefined;
}

const readText = async (text: string, name: string): Promise<Brought> =>
  formatOf(text) === 'testspoon-rack' ? readRack(text, name) : { work: await workFrom(text, name) };

async function readRack(text: string, name: string): Promise<Brought> {
  const { readRackText } = await import('../rack/files/reading.ts');
  return { rack: readRackText(text, name) };
}

/** Told from the first field that says it, without reading it all; nothing where none does. */
const formatOf = (text: string): string =>
  /"format"\s*:\s*"([^"]*)"/.exec(text.slice(0, 20_000))?.[1] ?? '';
