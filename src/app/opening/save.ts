/** How does a build get out of the browser? As a file, into the browser's downloads. */
import { useBench } from '../store.ts';

/** Hands a text to the browser's downloads. */
export function saveText(text: string, name: string, type = 'application/json'): void {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(new Blob([text], { type }));
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 1000);
}

/** Saves the open build. */
export async function saveWork(): Promise<void> {
  const work = useBench.getState().work;
  if (work === undefined) return;
  const { textOf } = await import('../../build/file.ts');
  saveText(textOf(work.build), `${work.build.id}.json`);
  const { noteWorkSaved } = await import('../keeping/saved.ts');
  await noteWorkSaved(work);
}
