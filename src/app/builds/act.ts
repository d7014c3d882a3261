/** What can be done with a kept build: open it, copy it, save it to a file, delete it. */
import type { Build } from '../../build/build.ts';
import { freeName, idFrom } from '../../ground/id.ts';
import {
  addBuild,
  type Kept,
  listBuilds,
  namesBeside,
  noteSaved,
  readBuild,
  removeBuild,
} from '../keeping/store/builds.ts';
import { isNewer, textOfDocument } from '../keeping/store/card.ts';
import type { Card } from '../keeping/store/database.ts';
import { noteGone, putBackAsItWas } from '../keeping/store/deleted.ts';
import { knowAs } from '../keeping/store/known.ts';
import { openWhenRead } from '../opening/incoming.ts';
import { saveText } from '../opening/save.ts';
import { demoWork, type FreshWork, workFromKept } from '../opening/start.ts';
import { newKey, open, useBench } from '../store.ts';
import { listAfresh, noteBack, noteDeleted } from './shelf.ts';

/** Work from a kept build; its key's revision is known from then on. */
async function workOf(key: string): Promise<FreshWork & { readonly key: string }> {
  const kept = await readBuild(key);
  if (kept === undefined) throw new Error('it is no longer kept in this browser');
  const work = await workFromKept(kept.document, kept.card.name);
  knowAs(key, { build: work.build, revision: kept.card.revision });
  return { ...work, key };
}

/** Lays a kept build on the bench; one undo step. */
export const openBuild = ({ key, name }: Card): Promise<boolean> => openWhenRead(name, workOf(key));

/** Puts a copy beside it, under a name of its own. */
export async function copyBuild({ key, name }: Card): Promise<void> {
  const kept = await readBuild(key);
  if (kept === undefined) return;
  const copy = freeName(`Copy of ${name}`, await namesBeside(''));
  const document: Build = { ...(kept.document as Build), name: copy };
  await addBuild(newKey(), document, kept.picture);
  await listAfresh();
}

/** Saves a kept build to a file, just as it is kept. */
export async function saveBuild({ key, name }: Card): Promise<void> {
  const kept = await readBuild(key);
  if (kept === undefined) return;
  const { id } = (kept.document ?? {}) as { id?: unknown };
  const stem = typeof id === 'string' ? idFrom(id) : idFrom(name, 'build');
  saveText(textOfDocument(kept.document), `${stem}.json`);
  await noteSaved(key).catch(() => {});
}

/**
 * Deletes a build. Where it is the open one, the build changed last before it is laid out, or the
 * demo; undo brings it back too.
 */
export async function deleteBuild({ key }: Card): Promise<void> {
  if (useBench.getState().work?.key === key) open(await otherThan(key));
  const kept = await removeBuild(key);
  if (kept === undefined) {
    knowAs(key, undefined);
    return;
  }
  noteGone(kept);
  noteDeleted(kept);
}

async function otherThan(key: string): Promise<FreshWork & { readonly key?: string }> {
  const others = (await listBuilds()).filter(({ card }) => card.key !== key && !isNewer(card));
  const [next] = others;
  if (next === undefined) return demoWork();
  return workOf(next.card.key).catch(demoWork);
}

/** Puts a deleted build back into the list. */
export async function restoreBuild(kept: Kept): Promise<void> {
  await putBackAsItWas(kept);
  noteBack(kept.card.key);
}
