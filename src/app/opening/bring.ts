/** Hands on what comes in; what reads it is fetched only then. */

/** Takes files that come together. */
export async function bringFiles(files: readonly File[]): Promise<void> {
  const incoming = await import('./incoming.ts');
  await incoming.bringFiles(files);
}

/** Takes text that was pasted, if it is any of ours. */
export async function bringPasted(text: string): Promise<void> {
  const { bringText } = await import('./incoming.ts');
  await bringText(text);
}
