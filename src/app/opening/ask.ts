/** Which file? The browser's own dialog, asked for from anywhere on the page. */
import { bringFiles } from './bring.ts';

/** Lets the builder choose a file, and opens it. Only while a press is being answered. */
export function askForFile(): void {
  const input = document.createElement('input');
  input.type = 'file';
  input.accept = '.json,.csv,.tsv,application/json,text/csv';
  input.className = 'unseen';
  input.tabIndex = -1;
  input.ariaLabel = 'File to open';
  const leave = (): void => input.remove();
  input.addEventListener('change', () => {
    void bringFiles([...(input.files ?? [])]);
    leave();
  });
  input.addEventListener('cancel', leave);
  // Some browsers forget a choice whose field is not in the page.
  document.body.append(input);
  input.click();
}
