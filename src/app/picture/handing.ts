/** Hands a drawn picture out as PNG: to the browser's downloads, or to its clipboard. */

const pngOf = (canvas: HTMLCanvasElement): Promise<Blob> =>
  new Promise((resolve, reject) => {
    canvas.toBlob((blob) => {
      if (blob === null) reject(new Error('this browser could not write so large a picture'));
      else resolve(blob);
    }, 'image/png');
  });

/** Saves the picture under this name. */
export async function savePicture(canvas: Promise<HTMLCanvasElement>, name: string): Promise<void> {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(await pngOf(await canvas));
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 1000);
}

/** Whether this browser lets pictures into its clipboard. */
export const canCopy = (): boolean =>
  typeof ClipboardItem !== 'undefined' &&
  typeof navigator.clipboard?.write === 'function' &&
  (ClipboardItem.supports?.('image/png') ?? true);

/** Copies the picture; to be called while the press that asked for it is being answered. */
export const copyPicture = (canvas: Promise<HTMLCanvasElement>): Promise<void> =>
  // The promise itself is handed over: a browser forgets the press while a picture is drawn.
  navigator.clipboard.write([new ClipboardItem({ 'image/png': canvas.then(pngOf) })]);
