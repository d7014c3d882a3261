/**
 * Lays the comparison out on paper while the browser prints. It stands before everything else on the
 * page, so that the names by which drawings refer to their own shades mean those on paper.
 */
import { flushSync } from 'react-dom';
import { createRoot } from 'react-dom/client';
import { useBench } from '../store.ts';
import { Paper } from './Paper.tsx';
import './print.css';

/** Listens for the beginning and the end of printing; the answer stops it. */
export function layOutOnPrint(): () => void {
  const sheet = document.createElement('div');
  sheet.className = 'paper';
  const root = createRoot(sheet);
  const lay = (): void => {
    if (sheet.isConnected || useBench.getState().work === undefined) return;
    document.body.prepend(sheet);
    flushSync(() => root.render(<Paper today={new Date()} />));
  };
  const clear = (): void => {
    flushSync(() => root.render(null));
    sheet.remove();
  };
  const media = matchMedia('print');
  const onMedia = ({ matches }: MediaQueryListEvent): void => (matches ? lay() : clear());
  window.addEventListener('beforeprint', lay);
  window.addEventListener('afterprint', clear);
  media.addEventListener('change', onMedia);
  return () => {
    window.removeEventListener('beforeprint', lay);
    window.removeEventListener('afterprint', clear);
    media.removeEventListener('change', onMedia);
    sheet.remove();
    // Not while something is being drawn.
    setTimeout(() => root.unmount());
  };
}
