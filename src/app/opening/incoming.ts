/**
 * What comes in from outside: files chosen, dropped or pasted, and pasted text. A build is opened,
 * a rack is handed to the rack's own dialog, anything else is refused in plain words. Whatever was
 * open stays untouched until something could be read whole, and one undo away after that.
 */
import { mostBuildBytes } from '../../build/file.ts';
import { InputError, type Problem } from '../../ground/problem.ts';
import { clear } from '../overlay/overlay.ts';
import { open } from '../store.ts';
import { useRefused } from './refused.ts';
import { type FreshWork, workFrom } from './start.ts';

let latest = 0;

/** Opens work once it is there, or tells why not. A slow one gives way to what was opened later. */
export async function openWhenRead(
  name: string,
  work: Promise<(FreshWork & { readonly key?: string }) | undefined>,
): Promise<boolean> {
  latest += 1;
  const turn = latest;
  try {
    const found = await work;
    if (turn !== latest || found === undefined) return false;
    useRefused.setState({ refused: undefined });
    clear();
    open(found);
    return true;
  } catch (error) {
    if (turn === latest)
      useRefused.setState({ refused: { name, problems: problemsIn(error), turn } });
    return false;
  }
}

const problemsIn = (error: unknown): readonly Problem[] => {
  if (error instanceof InputError) return error.problems;
  const found = error instanceof Error ? error.message : 'an unknown fault';
  return [{ place: '', found, expected: 'a readable file', mend: 'Try again.' }];
};

/** Takes a file. */
export async function bringFile(file: File): Promise<void> {
  await openWhenRead(file.name, readFile(file));
}

/** Takes text that was pasted; any that is none of ours is left alone. */
export async function bringText(text: string): Promise<void> {
  const name = 'What was pasted';
  if (/^\s*\{/.test(text)) await openWhenRead(name, readText(text, name));
  else if (looksLikeTable(text)) await bringRack(text, name);
}

/** Lines of a spreadsheet or of CSV: at least two, the first with several columns. */
const looksLikeTable = (text: string): boolean =>
  /^[^\n]*(\t|[;,][^\n]*[;,])[^\n]*\n[^\n]*\S/.test(text);

const isTable = ({ name, type }: File): boolean =>
  /\.(csv|tsv)$/i.test(name) || type === 'text/csv' || type === 'text/tab-separated-values';

async function readFile(file: File): Promise<FreshWork | undefined> {
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
  const { bringRackFile } = await import('../rack/files/bring.ts');
  await bringRackFile(file);
  return undefined;
}

const refusal = (found: string, expected: string, mend: string, source: string): InputError =>
  new InputError([{ place: '', found, expected, mend }], source);

/** What a file is that holds no text of ours; undefined where it may. */
function kindOf({ name, type }: File): string | undefined {
  const ending = /\.([a-z0-9]+)$/i.exec(name)?.[1]?.toLowerCase() ?? '';
  if (type.startsWith('image/')) return 'a picture';
  if (type.startsWith('video/') || type.startsWith('audio/')) return 'a recording';
  if (['pdf', 'doc', 'docx', 'odt'].includes(ending)) return 'a document';
  if (['xls', 'xlsx', 'ods', 'numbers'].includes(ending)) {
    return 'a spreadsheet of its program’s own kind';
  }
  if (['zip', '7z', 'rar', 'gz'].includes(ending)) return 'a packed folder';
  return ['glb', 'gltf', 'obj', 'stl', 'step'].includes(ending) ? 'a 3D model' : undefined;
}

/** A build's work; undefined where it is a rack, which is handed on. */
async function readText(text: string, name: string): Promise<FreshWork | undefined> {
  if (!isRack(text)) return workFrom(text, name);
  await bringRack(text, name);
  return undefined;
}

/** Hands a rack to the dialog that says what would come of it. */
async function bringRack(text: string, name: string): Promise<void> {
  const rackFiles = await import('../rack/files/bring.ts');
  rackFiles.bringRack(text, name);
}

/** Told from the first field that says it, without reading it all. */
const isRack = (text: string): boolean =>
  /"format"\s*:\s*"([^"]*)"/.exec(text.slice(0, 20_000))?.[1] === 'testspoon-rack';
