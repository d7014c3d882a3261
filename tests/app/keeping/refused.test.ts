/**
 * Whatever an edit may leave behind, what is kept opens again: work and racks that their own reader
 * would refuse never take the place of what it reads. Worked out by hand on one build and one rack;
 * the store is one in memory.
 */
import { readFileSync } from 'node:fs';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { changesBetween } from '../../../src/app/keeping/merge.ts';
import { putNoticeAway, useStatus } from '../../../src/app/keeping/status.ts';
import type { Work } from '../../../src/app/store.ts';
import type { Build } from '../../../src/build/build.ts';
import { openBuild } from '../../../src/build/file.ts';
import { buildFrom } from '../../../src/build/read/document.ts';
import type { SightTable } from '../../../src/car/table.ts';
import { emptyRack } from '../../../src/finish/rack/edit.ts';
import { parseRack } from '../../../src/finish/rack/rack.ts';
import { finishWith } from '../../finish/sample.ts';
import { shelvesInMemory } from './shelves.ts';

const { shelf, database } = shelvesInMemory();
vi.mock('../../../src/app/keeping/store/database.ts', async (original) => ({
  ...(await original<object>()),
  database: () => database(),
}));
vi.mock('../../../src/app/keeping/pictures.ts', () => ({ pictureLater: () => {} }));
vi.stubGlobal('navigator', {});
vi.stubGlobal('addEventListener', () => {});

const read = (path: string): string =>
  readFileSync(new URL(`../../../${path}`, import.meta.url), 'utf8');
const demo = openBuild(read('src/build/demo.json'));
const sight = JSON.parse(read('models/roadster.sight.json')) as SightTable;
const car = { id: sight.car, sight, views: [], glb: undefined };
const named = (name: string, more: Partial<Build> = {}): Work => ({
  build: { ...demo, name, ...more },
  car,
  key: 'mine',
});
const pointingNowhere: Partial<Build> = { rules: [{ kind: 'must-echo', part: 'roof-rack' }] };

const documentAt = (key: string): Build | undefined =>
  (shelf('builds').get(key) as { document: Build } | undefined)?.document;
const notices = (): string[] => useStatus.getState().notices.map(({ text }) => text);
const drawn = async (work: Work): Promise<void> => {
  useStatus.setState({ drawn: work });
  await vi.waitFor(() => expect(useStatus.getState().state).not.toBe('keeping'));
};

afterEach(() => {
  for (const { id } of useStatus.getState().notices) putNoticeAway(id);
});

describe('a build that its reader would refuse', () => {
  it('stays kept as it was, is put aside and told, and is kept again once it is mended', async () => {
    const { startKeeping } = await import('../../../src/app/keeping/keeper.ts');
    startKeeping();
    await drawn(named('Sound'));
    expect(documentAt('mine')?.name).toBe('Sound');

    await drawn(named('Broken', pointingNowhere));
    expect(buildFrom(documentAt('mine')).name).toBe('Sound');
    expect(documentAt('mine-aside')).toMatchObject({
      name: 'Broken (set aside)',
      ...pointingNowhere,
    });
    expect(useStatus.getState().state).toBe('unkept');
    expect(notices().join()).toMatch(/could not be opened again \(rules › 1 › part: found “roof-/);

    await drawn(named('Mended'));
    expect(documentAt('mine')?.name).toBe('Mended');
    expect(documentAt('mine-aside')).toBeUndefined();
    expect(useStatus.getState().state).toBe('kept');
    expect(notices()).toEqual([]);
  });
});

describe('a rack that its reader would refuse', () => {
  const sky = finishWith({ id: 'sky', name: 'Sky' });
  const before = { ...emptyRack('shelf', 'Shelf'), finishes: [sky] };
  const stored = (): unknown => (shelf('racks').get('shelf') as { rack: unknown }).rack;

  it('stays kept as it was, until a change can be read again', async () => {
    const { keepRackChanges } = await import('../../../src/app/keeping/store/racks.ts');
    const nothing = { racks: [], revisions: undefined };
    const change = (
      from: typeof nothing | Awaited<ReturnType<typeof keepRackChanges>>,
      to: typeof before,
    ) => keepRackChanges(from, { ...from, racks: [to] }, changesBetween(from.racks, [to]));

    const first = await change(nothing, before);
    expect(first.refused).toEqual([]);
    // A mark that turns the text around, as pasted text may hold.
    const turned = { ...before, name: 'Shelf\u200f' };
    const second = await change(first, turned);
    expect(second.refused).toMatchObject([{ name: 'Shelf\u200f', problem: { place: 'name' } }]);
    expect(parseRack(JSON.stringify(stored()), 'shelf')).toEqual(before);
    expect(shelf('racks').get('shelf beside')).toMatchObject({ rack: turned });

    const more = {
      ...turned,
      name: 'Shelf',
      finishes: [sky, finishWith({ id: 'sea', name: 'Sea' })],
    };
    const third = await change(second, more);
    expect(third.refused).toEqual([]);
    expect(parseRack(JSON.stringify(stored()), 'shelf')).toEqual(more);
  });
});
