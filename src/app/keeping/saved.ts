/** A build was saved to a file, so for a while nothing need be said about losing it. */

import { noteLasting } from './lasting.ts';
import { noteSaved } from './store/builds.ts';

/** Notes it; a browser that refuses has nothing kept to be noted of. */
export async function noteWorkSaved(key: string): Promise<void> {
  noteLasting();
  await noteSaved(key).catch(() => {});
}
