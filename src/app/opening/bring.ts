/** Hands on what comes in; what reads it is fetched only then. */

/** Takes files that come together. */
export async function bringFiles(files: readonly File[]): Promise<void> {
  const incoming = await import('./incoming.ts');
  await incoming.bringFiles(files);
}

const start = '#start-';

/** Takes a round that the address leads to; the address then says nothing any more. */
export function bringFromAddress(): void {
  const { hash, pathname, search } = location;
  if (!hash.startsWith(start)) return;
  history.replaceState(history.state, '', `${pathname}${search}`);
  void import('./round.ts').then(({ bringStart }) => bringStart(hash.slice(start.length)));
}

/** Takes text that was pasted or dropped, if it is any of ours: a build, a rack, or a link. */
export async function bringPasted(text: string): Promise<void> {
  const { bringText } = await import('./incoming.ts');
  if (await bringText(text)) return;
  const { bringLink } = await import('./round.ts');
  await bringLink(text);
}
