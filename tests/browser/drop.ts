/** A file dropped onto the page, as from the desktop. */
import type { Page } from 'playwright-core';

export const dropFile = (page: Page, name: string, text: string): Promise<void> =>
  page.evaluate(
    ([fileName, content]) => {
      const dataTransfer = new DataTransfer();
      dataTransfer.items.add(new File([content!], fileName!, { type: 'application/json' }));
      for (const type of ['dragover', 'drop']) {
        document.dispatchEvent(new DragEvent(type, { dataTransfer, bubbles: true }));
      }
    },
    [name, text],
  );
