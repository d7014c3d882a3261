/** Hands on what comes in; what reads it is fetched only then. */

/** Takes files one after the other, each an undo step of its own. */
export async function bringFiles(files: readonly File[]): Promise<void> {
  const { bringFile } = await import('./incoming.ts');
  for (const file of files) await bringFile(file);
}

/** Takes text that was pasted, if it is any of ours. */
export async function bringPasted(text: string): Promise<void> {
  const { bringText } = await import('./incoming.ts');
  await bringText(text);
}
