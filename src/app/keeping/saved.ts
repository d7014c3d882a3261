/** A build was saved to a file, so for a while nothing need be said about losing it. */
import type { Build } from '../../build/build.ts';
import type { Work } from '../store.ts';
import { noteLasting } from './lasting.ts';
import { noteSaved } from './store/builds.ts';

let latest: Build | undefined;

/** Whether this is what was saved to a file last. */
export const isSaved = (build: Build): boolean => build === latest;

/** Notes it; a browser that refuses has nothing kept to be noted of. */
export async function noteWorkSaved({ key, build }: Work): Promise<void> {
  latest = build;
  noteLasting();
  await noteSaved(key).catch(() => {});
}
