/** Opens the page: fetches the work, then lays out the bench, or says plainly why it cannot. */
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { App } from './App.tsx';
import { Boundary } from './Boundary.tsx';
import './app.css';
import './pieces/pieces.css';
import './pieces/spoon.css';
import './pieces/form.css';
import './head/head.css';
import './live/canvas/live.css';
import './cars/cars.css';
import './cars/card/card.css';
import './table/table.css';
import './table/chooser.css';
import './table/carried.css';
import './sheet/sheet.css';
import './picture/picture.css';
import './narrow.css';
import './cars/compact/compact.css';
import './contrast.css';
import './reach.css';
import { firstWork } from './opening/first.ts';
import { open } from './store.ts';

const host = document.getElementById('bench')!;

/**
 * Runs beside the module, which must not wait for it: what keeps builds is fetched on the way and
 * may lie in one script with this.
 */
async function begin(): Promise<void> {
  try {
    open(await firstWork());
    createRoot(host).render(
      <StrictMode>
        <Boundary>
          <App />
        </Boundary>
      </StrictMode>,
    );
  } catch (error) {
    const reason = error instanceof Error ? error.message : String(error);
    const words = document.createElement('p');
    words.className = 'waiting';
    words.textContent = `The bench could not be laid out: ${reason}. Reload the page to try again.`;
    host.replaceChildren(words);
  }
}

void begin();
