/**
 * Which bottle a film comes from, whether it is on hand, and who else needs it. What is said of a
 * bottle here holds for it in every rack and in the build.
 */
import {
  bottleAt,
  type FilmPlace,
  freshBottle,
  othersUsing,
  setBottle,
  shelfOf,
} from '../../../finish/edit/bottle.ts';
import { numberTyped } from '../../../finish/edit/typed.ts';
import type { Bottle as Told } from '../../../finish/finish.ts';
import { Field } from '../../pieces/Field.tsx';
import { nameFault } from '../../pieces/naming.ts';
import { useRacks } from '../../store.ts';
import { type Live, retell, useShelved } from '../live.ts';
import { Select } from '../Select.tsx';
import { othersOf } from '../words.ts';

const [none, fresh] = ['none/', 'own/'] as const;

interface BottleProps {
  readonly live: Live;
  readonly rack: string;
  readonly place: FilmPlace;
  /** What the film is called, for a new bottle. */
  readonly film: string;
}

/** The bottle of one film. */
export function Bottle({ live: { finish, takeAlone }, rack, place, film }: BottleProps) {
  const finishes = useRacks()?.find(({ id }) => id === rack)?.finishes ?? [finish];
  const shelf = shelfOf(finishes);
  const own = bottleAt(finish, place);
  const bottle = useShelved(own) ?? own;
  const put = (next: Told | undefined) => takeAlone((now) => setBottle(now, place, next));
  const choose = (id: string): void => {
    if (id === none) put(undefined);
    else if (id === fresh) put(freshBottle(film, shelf));
    else put(shelf.find((one) => one.id === id));
  };
  const change = (changes: Partial<Omit<Told, 'id'>>): undefined => {
    if (bottle !== undefined) retell({ rack, finish: finish.id }, bottle.id, changes);
  };
  const others = bottle === undefined ? 0 : othersUsing(bottle.id, finish, finishes);
  const choices = [
    { value: none, name: 'No bottle' },
    { value: fresh, name: 'A new bottle' },
    ...shelf.map(({ id, name }) => ({ value: id, name })),
  ];
  return (
    <div className="bottle">
      <Select
        label="Comes from"
        value={bottle?.id ?? none}
        choices={choices}
        onChoose={choose}
        hint={
          others === 0
            ? undefined
            : `Also used by ${othersOf(others)}: what you say of it here holds for all.`
        }
      />
      {bottle === undefined ? null : (
        <>
          <Field
            label="Name of the bottle"
            value={bottle.name}
            onType={(name) => nameFault(name) ?? change({ name: name.trim() })}
          />
          <label className="tick">
            <input
              type="checkbox"
              checked={bottle.onHand}
              onChange={({ currentTarget }) => change({ onHand: currentTarget.checked })}
            />
            On hand
          </label>
          {bottle.onHand ? null : (
            <Field
              label="Takes to come"
              kind="number"
              unit="days"
              value={String(bottle.leadDays)}
              onType={(text) => {
                const { value, fault } = numberTyped(text, { low: 0, high: 365, unit: 'days' });
                return value === undefined ? fault : change({ leadDays: value });
              }}
            />
          )}
        </>
      )}
    </div>
  );
}
