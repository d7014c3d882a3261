/**
 * Do films keep their order, does each get its verdict on the one beneath, and is a shared bottle
 * told once? Expected orders are derived by hand; verdicts are those of `finish/chemistry`.
 */
import { describe, expect, it } from 'vitest';
import { layeringOf } from '../../../src/finish/chemistry.ts';
import { faultsOf } from '../../../src/finish/edit/admit.ts';
import {
  bottleAt,
  freshBottle,
  othersUsing,
  setBottle,
  shelfOf,
} from '../../../src/finish/edit/bottle.ts';
import {
  addUndercoat,
  changeClear,
  changeUndercoat,
  mostUndercoats,
  moveUndercoat,
  removeUndercoat,
  setClear,
  setTint,
} from '../../../src/finish/edit/film.ts';
import { freshFinish } from '../../../src/finish/edit/fresh.ts';
import { chemistriesOf, layersOf } from '../../../src/finish/edit/layer.ts';
import { emptyRack, putFinish } from '../../../src/finish/rack/edit.ts';
import { parseRack, textOfRack } from '../../../src/finish/rack/rack.ts';
import { finishWith } from '../sample.ts';

const primer = { id: 'grey-primer', name: 'Grey primer', onHand: true, leadDays: 0 };
const three = ['one', 'two', 'three'].reduce(
  (finish, name, at) => changeUndercoat(addUndercoat(finish), at, { name }),
  finishWith({ chemistry: 'lacquer' }),
);
const names = (finish: typeof three): string[] => finish.undercoats.map(({ name }) => name);

describe('undercoats', () => {
  it('are laid on top of one another, moved and taken out', () => {
    expect(names(three)).toEqual(['one', 'two', 'three']);
    expect(names(moveUndercoat(three, 0, 1))).toEqual(['two', 'one', 'three']);
    expect(names(moveUndercoat(three, 2, -1))).toEqual(['one', 'three', 'two']);
    expect(names(removeUndercoat(three, 1))).toEqual(['one', 'three']);
  });

  it('stay at an end, and are six at most', () => {
    expect(moveUndercoat(three, 0, -1)).toBe(three);
    expect(moveUndercoat(three, 2, 1)).toBe(three);
    let full = three;
    for (let more = 0; more < 9; more++) full = addUndercoat(full);
    expect(full.undercoats.length).toBe(mostUndercoats);
    expect(faultsOf(full)).toEqual([]);
  });

  it('are not for what is not painted', () => {
    const flock = finishWith({ effect: 'flock' });
    expect(addUndercoat(flock)).toBe(flock);
    expect(setClear(flock, true)).toBe(flock);
  });
});

describe('a clear coat', () => {
  it('goes on with a tint and comes off whole', () => {
    const on = setTint(setClear(three, true), { srgb: '#eeddcc' });
    expect(changeClear(on, { coats: 4 }).clear).toMatchObject({ coats: 4, chemistry: 'lacquer' });
    expect(setTint(on, undefined).clear?.tint).toBeUndefined();
    expect(setClear(on, false)).toEqual(three);
    expect(changeClear(three, { coats: 4 })).toBe(three);
    expect(setTint(three, { srgb: '#eeddcc' })).toBe(three);
  });
});

describe('films in the order they go on', () => {
  it('each is judged over the one beneath, from the plastic up', () => {
    const finish = changeClear(
      setClear(
        finishWith({
          chemistry: 'enamel',
          undercoats: [
            {
              name: 'Grey primer',
              role: 'primer',
              effect: 'solid',
              colour: { srgb: '#888888' },
              chemistry: 'acrylic',
            },
          ],
        }),
        true,
      ),
      { chemistry: 'lacquer' },
    );
    const layers = layersOf(finish);
    expect(layers.map(({ name }) => name)).toEqual(['Grey primer', 'Sample', 'Clear']);
    expect(layers[0]?.over).toBeUndefined();
    expect(layers[1]?.over).toEqual(layeringOf('enamel', 'acrylic'));
    // Lacquer over enamel lifts it: the best known of all layering faults.
    expect(layers[2]?.over?.verdict).toBe('avoid');
    expect(chemistriesOf(finish)).toEqual(['acrylic', 'enamel', 'lacquer']);
    expect(layersOf(finishWith({ effect: 'ribbon' }))).toEqual([]);
  });
});

describe('bottles', () => {
  it('a bottle is put to any film and taken away again', () => {
    for (const place of ['paint', 'clear', 1] as const) {
      const clear = setClear(three, true);
      const put = setBottle(clear, place, primer);
      expect(bottleAt(put, place)).toEqual(primer);
      expect(setBottle(put, place, undefined)).toEqual(clear);
    }
  });

  it('one bottle for two films of a finish is told the same way in both', () => {
    const both = setBottle(setBottle(three, 0, primer), 2, primer);
    const renamed = setBottle(both, 0, { ...primer, name: 'Primer, large', onHand: false });
    expect(bottleAt(renamed, 2)).toEqual({ ...primer, name: 'Primer, large', onHand: false });
    expect(faultsOf(renamed)).toEqual([]);
  });

  it('who else uses it is counted without the finish itself', () => {
    const own = setBottle(three, 0, primer);
    const rack = [
      own,
      { ...own, id: 'other' },
      { ...own, id: 'third' },
      finishWith({ id: 'bare' }),
    ];
    expect(othersUsing(primer.id, own, rack)).toBe(2);
    expect(shelfOf(rack)).toEqual([primer]);
  });

  it('a new bottle takes an id and a name that are free', () => {
    const shelf = [primer, freshBottle('Grey primer', [primer])];
    expect(shelf.map(({ id }) => id)).toEqual(['grey-primer', 'grey-primer-2']);
    expect(new Set(shelf.map(({ name }) => name)).size).toBe(2);
  });
});

describe('a new finish', () => {
  it('can be put into a rack again and again, alone or like another', () => {
    let rack = emptyRack('shelf', 'Shelf');
    for (let more = 0; more < 3; more++) rack = putFinish(rack, freshFinish(rack.finishes));
    rack = putFinish(rack, freshFinish(rack.finishes, setBottle(three, 0, primer)));
    expect(rack.finishes.map(({ name }) => name)).toEqual([
      'New finish',
      'New finish 2',
      'New finish 3',
      'Like Sample',
    ]);
    expect(parseRack(textOfRack(rack), 'shelf').finishes).toEqual(rack.finishes);
  });
});
