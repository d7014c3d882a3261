/** Where a dialog opens: under what was clicked, inside the window, a sheet at the foot on phones. */

const edge = 12;
const narrow = 640;

/** Places the dialog beside the clicked rectangle; CSS pixels in the window. */
export function placeBeside(dialog: HTMLDialogElement, from: DOMRect): void {
  const { style } = dialog;
  for (const name of ['top', 'left', 'maxHeight'] as const) style[name] = '';
  if (window.innerWidth < narrow) return;
  const { width, height } = dialog.getBoundingClientRect();
  const below = window.innerHeight - from.bottom - 2 * edge;
  const top =
    height <= below ? from.bottom + edge / 2 : Math.max(edge, window.innerHeight - height - edge);
  const right = window.innerWidth - width - edge;
  style.top = `${top}px`;
  style.left = `${Math.max(edge, Math.min(from.left, right))}px`;
  style.maxHeight = `${window.innerHeight - top - edge}px`;
}
