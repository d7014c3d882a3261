/**
 * Which work did this browser have open last? Work of an earlier Testspoon is taken over first.
 * Whatever cannot be opened stays where it is, and the builder is told; nothing is deleted.
 */
import { parseJson } from '../../finish/parse.ts';
import { earlierText, forgetEarlier, setAside } from '../opening/keep.ts';
import { type FreshWork, workFromKept } from '../opening/start.ts';
import { newKey } from '../store.ts';
import { lastOpen, rememberOpen } from './pointer.ts';
import { say } from './status.ts';
import { addBuild, readBuild } from './store/builds.ts';
import { isNewer } from './store/card.ts';
import { knowAs } from './store/known.ts';
import { refuse } from './trouble.ts';

type LastWork = FreshWork & { readonly key: string };
const source = 'your last visit';

/** The work that was open last; undefined where there is none, or it cannot be opened. */
export async function lastWork(): Promise<LastWork | undefined> {
  const text = earlierText();
  if (text !== undefined) {
    const unkept = await takeOver(text);
    if (unkept !== undefined) return unkept;
  }
  const key = lastOpen();
  if (key === undefined) return undefined;
  try {
    return await keptWork(key);
  } catch (error) {
    refuse('build', error);
    return undefined;
  }
}

/** The build kept under a key, ready for the bench; undefined, and told, where it cannot be. */
async function keptWork(key: string): Promise<LastWork | undefined> {
  const kept = await readBuild(key);
  if (kept === undefined) return undefined;
  const { card, document } = kept;
  try {
    const work = await workFromKept(document, source);
    knowAs(key, { build: work.build, revision: card.revision });
    return { ...work, key };
  } catch {
    const why = isNewer(card)
      ? 'was made by a newer Testspoon, so it was not opened here'
      : 'could not be opened';
    say({
      id: 'not-opened',
      text: `“${card.name}”, open on your last visit, ${why}. It stays untouched under Builds; this is the demo.`,
      remedies: ['builds'],
    });
    return undefined;
  }
}

/** Takes work of an earlier Testspoon over. Where the browser refuses, it is opened from there. */
async function takeOver(text: string): Promise<LastWork | undefined> {
  const document = documentIn(text);
  if (document === undefined) {
    say({
      id: 'set-aside',
      text: setAside(text)
        ? 'Work kept from an earlier visit could not be read and was set aside; this is the demo.'
        : 'Work kept from an earlier visit could not be read and stays in this browser untouched; this is the demo.',
    });
    return undefined;
  }
  const key = newKey();
  try {
    await addBuild(key, document);
    forgetEarlier(text);
    if (lastOpen() === undefined) rememberOpen(key);
    return undefined;
  } catch (error) {
    refuse('build', error);
    return workFromKept(document, source)
      .then((work) => ({ ...work, key }))
      .catch(() => undefined);
  }
}

/** The text as a build document, sound or not; undefined where it is not even that. */
function documentIn(text: string): unknown {
  try {
    const value = parseJson(text, source);
    const format = (value as { format?: unknown } | null)?.format;
    return format === 'testspoon-build' ? value : undefined;
  } catch {
    return undefined;
  }
}
