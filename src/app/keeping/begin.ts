/** Begins to keep builds and racks, once the page stands. */
import { startKeeping } from './keeper.ts';
import { fetchRacks } from './racks.ts';

/** Nothing on the first page waits for it. */
export function beginKeeping(): void {
  startKeeping();
  void fetchRacks();
  // Saving must never wait for a web space that may be gone by then.
  void import('../../build/file.ts');
}
