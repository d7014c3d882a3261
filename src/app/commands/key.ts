/** Ctrl or ⌘ with K, anywhere on the page: everything that can be done, by its name. */
import { clear, lay, useOverlay } from '../overlay/overlay.ts';

/** Listens until it is told to stop, by the function it answers with. */
export function listenForCommands(): () => void {
  const onKey = (event: KeyboardEvent): void => {
    if (!(event.ctrlKey || event.metaKey) || event.altKey || event.shiftKey) return;
    if (event.key.toLowerCase() !== 'k') return;
    event.preventDefault();
    if (useOverlay.getState().overlay?.kind === 'commands') clear();
    else lay({ kind: 'commands' });
  };
  document.addEventListener('keydown', onKey);
  return () => document.removeEventListener('keydown', onKey);
}
