/** Puts the cars to turn into a page that is drawn without React, and takes them away again. */
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import type { Round } from '../../../opinion/round.ts';
import type { Car } from '../../opening/garage.ts';
import { Turn } from './Turn.tsx';

export interface Turned {
  readonly round: Round;
  readonly car: Car;
  /** In the order this viewer sees them in. */
  readonly letters: readonly string[];
}

/** Shows them within `host`; what it gives back takes them away. */
export function mountTurn(host: HTMLElement, turned: Turned): () => void {
  const root = createRoot(host);
  root.render(
    <StrictMode>
      <Turn {...turned} />
    </StrictMode>,
  );
  return () => root.unmount();
}
