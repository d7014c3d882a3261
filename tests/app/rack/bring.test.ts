/**
 * Finishes on their way onto racks: where they go, what the open build wears of them, and one step
 * back. Worked out by hand on two finishes.
 */
import { describe, expect, it } from 'vitest';
import {
  bringIn,
  type Outcome,
  outcomeOf,
  type Whereto,
} from '../../../src/app/rack/files/bring.ts';
import { readRackFile, readRackText } from '../../../src/app/rack/files/reading.ts';
import { outcomeInWords } from '../../../src/app/rack/files/told.ts';
import { undo, useBench, type Work } from '../../../src/app/store.ts';
import { emptyRack } from '../../../src/finish/rack/edit.ts';
import type { Rack } from '../../../src/finish/rack/rack.ts';
import { sketched } from '../../build/sample.ts';
import { finishWith } from '../../finish/sample.ts';

const build = sketched({ finishes: ['grey', 'plum'], parts: { body: ['grey', 'plum'] } });
const { rack: _, ...grey } = build.finishes.find(({ id }) => id === 'grey')!;
const shelf: Rack = { ...emptyRack('shelf', 'Shelf'), finishes: [grey] };
const other = emptyRack('other', 'Other');
const darker = { ...grey, colour: { lab: [20, 0, 0], light: 'D65' } } as typeof grey;
const incoming: Rack = {
  ...emptyRack('shelf', 'Shelf'),
  finishes: [darker, finishWith({ id: 'sky', name: 'Sky' })],
};
const outcome = (to: Whereto): Outcome => outcomeOf([shelf, other], [incoming], to, build);

describe('finishes brought in', () => {
  it('stand on a rack of their own under a free id and the name given', () => {
    const { racks, worn } = outcome({ kind: 'new', name: 'Spares' });
    expect(racks.map(({ id, name, finishes }) => [id, name, finishes.length])).toEqual([
      ['shelf', 'Shelf', 1],
      ['other', 'Other', 0],
      ['spares', 'Spares', 2],
    ]);
    expect(worn).toBe(0);
  });

  it('change on the open build where they take the place of what it wears, and that is told', () => {
    const taken = outcome({ kind: 'into', rack: 'shelf', sameId: 'replace' });
    expect(taken.worn).toBe(1);
    expect(outcomeInWords(taken)).toEqual([
      '1 finish is new to this rack.',
      '1 finish takes the place of one that is there.',
      '1 finish of these is in the open build and changes there too.',
    ]);
    expect(outcome({ kind: 'into', rack: 'shelf', sameId: 'skip' }).worn).toBe(0);
    expect(outcome({ kind: 'into', rack: 'other', sameId: 'replace' }).worn).toBe(0);
  });

  it('come and go with what the build wears of them in one step', () => {
    const work = { build, key: 'test' } as Work;
    useBench.setState({ work, racks: [shelf, other] });
    useBench.temporal.getState().clear();
    bringIn(outcome({ kind: 'into', rack: 'shelf', sameId: 'replace' }));
    const now = useBench.getState();
    expect(now.racks?.[0]?.finishes.map(({ id }) => id)).toEqual(['grey', 'sky']);
    expect(now.work?.build.finishes.find(({ id }) => id === 'grey')?.colour).toEqual(darker.colour);
    undo();
    expect(useBench.getState().racks).toEqual([shelf, other]);
    expect(useBench.getState().work?.build).toEqual(build);
  });
});

describe('what is read', () => {
  it('is called by its file, and refused with reasons rather than thrown', () => {
    expect(readRackText('Name,Hex\nA,#112233', 'My paint.csv').rack).toMatchObject({
      id: 'my-paint',
      name: 'My paint',
    });
    const broken = readRackText('{"format": "testspoon-rack",', 'broken.json');
    expect([broken.rack, broken.problems.length]).toEqual([undefined, 1]);
    expect(readRackText('{"format": "testspoon-build"}', 'b.json').problems[0]?.found).toBe(
      'a build',
    );
  });

  it.each([
    ['UTF-8', new TextEncoder().encode('Name,Hex\nCafé,#112233'), 0],
    ['UTF-16', Uint8Array.from(Buffer.from('\ufeffName\tHex\nCafé\t#112233', 'utf16le')), 0],
    ['Windows-1252', Uint8Array.from(Buffer.from('Name;Hex\nCafé;#112233', 'latin1')), 1],
  ])('keeps its letters from %s', async (_coding, bytes, mentions) => {
    const { rack, granted } = await readRackFile(new File([bytes], 'paint.csv'));
    expect(rack?.finishes[0]?.name).toBe('Café');
    expect(granted.filter((one) => one.includes('not UTF-8'))).toHaveLength(mentions);
  });

  it('is refused unread where it is too large', async () => {
    const large = { name: 'large.csv', size: 64_000_001 } as File;
    expect((await readRackFile(large)).problems[0]?.found).toBe('65 MB');
  });
});
