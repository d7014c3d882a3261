/** What is on the bench when the page opens? The build that was open last, else the demo. */
import { lastOpen } from '../keeping/pointer.ts';
import { earlierText } from './keep.ts';
import { demoWork, type FreshWork } from './start.ts';

/** The work to open with. What keeps builds is fetched only by a browser that has kept one. */
export async function firstWork(): Promise<FreshWork & { readonly key?: string }> {
  if (earlierText() === undefined && lastOpen() === undefined) return demoWork();
  const { lastWork } = await import('../keeping/last.ts');
  return (await lastWork()) ?? demoWork();
}
