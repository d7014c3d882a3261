/**
 * Which racks does the builder have? Those kept from the last visit, else the two that come with
 * Testspoon, so that there is something to choose from on the first evening.
 */
import { parseRack, type Rack } from '../../finish/rack/rack.ts';
import { textOf } from '../opening/garage.ts';
import { layOutRacks, useBench } from '../store.ts';

const starters = import.meta.glob<string>('../../../palettes/*.json', {
  query: '?url',
  import: 'default',
  eager: true,
});

/** The racks that come with Testspoon. */
export const starterRacks = (): Promise<readonly Rack[]> =>
  Promise.all(
    Object.entries(starters).map(async ([path, url]) =>
      parseRack(await textOf(url), path.replace(/^.*\//, '')),
    ),
  );

/** Lays out the builder's racks, once. */
export async function fetchRacks(): Promise<void> {
  if (useBench.getState().racks !== undefined) return;
  const racks = await starterRacks();
  if (useBench.getState().racks === undefined) layOutRacks(racks);
}
