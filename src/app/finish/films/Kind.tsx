/** Which sort of surface is it, and how does a flake turn with the light? */
import { useState } from 'react';
import {
  type FlopForm,
  flopFormOf,
  flopWords,
  hasFlake,
  setEffect,
  setFlopColour,
  setFlopIndex,
  withoutFlop,
} from '../../../finish/edit/effect.ts';
import { perhapsNumberTyped } from '../../../finish/edit/typed.ts';
import type { Effect } from '../../../finish/finish.ts';
import { usualFlopIndex } from '../../../finish/flop.ts';
import { Choice } from '../../pieces/Choice.tsx';
import { Field } from '../../pieces/Field.tsx';
import { undo } from '../../store.ts';
import { ColourEntry } from '../colour/ColourEntry.tsx';
import type { Live } from '../live.ts';
import { painted, unpainted } from '../words.ts';

/** Effect, what was dropped by changing it, and the flop of flake. */
export function Kind({ live }: { live: Live }) {
  const { finish, takeAlone } = live;
  const [dropped, setDropped] = useState<readonly string[]>([]);
  const choose = (effect: Effect): void => {
    setDropped(setEffect(finish, effect).dropped);
    takeAlone((now) => setEffect(now, effect).finish);
  };
  return (
    <section className="editor-section">
      <h3>Kind of finish</h3>
      <Choice legend="Painted" value={finish.effect} options={painted} onChoose={choose} />
      <Choice legend="Not painted" value={finish.effect} options={unpainted} onChoose={choose} />
      <div role="status" className="editor-remark">
        {dropped.length === 0 ? null : (
          <p>
            Dropped, since this kind has none: {dropped.join(', ')}.{' '}
            <button
              type="button"
              className="text-button"
              onClick={() => {
                undo();
                setDropped([]);
              }}
            >
              Bring it back
            </button>
          </p>
        )}
      </div>
      {hasFlake(finish) ? <Flop live={live} /> : null}
    </section>
  );
}

const forms: readonly { value: FlopForm; name: string }[] = [
  { value: 'usual', name: 'As usual' },
  { value: 'index', name: 'Flop index' },
  { value: 'colours', name: 'Face and flop' },
];

function Flop({ live: { finish, take, takeAlone } }: { live: Live }) {
  const told = flopFormOf(finish);
  // Two colours stay in sight while both are still empty.
  const [wanted, setWanted] = useState(told);
  const form = told === 'usual' && wanted === 'colours' ? wanted : told;
  const usual = usualFlopIndex(finish.effect);
  const turn = (to: FlopForm): void => {
    setWanted(to);
    takeAlone((now) => (to === 'index' ? setFlopIndex(now, usual) : withoutFlop(now)));
  };
  return (
    <>
      <Choice legend="How it turns with the light" value={form} options={forms} onChoose={turn} />
      {form === 'usual' ? (
        <p className="quiet">Nothing recorded: taken as flop index {usual}, usual for its kind.</p>
      ) : null}
      {form === 'index' ? (
        <div className="fields">
          <Field
            label="Flop index"
            kind="number"
            value={String(finish.flopIndex ?? '')}
            hint="0 flat, 15 to 17 very strong."
            onType={(text) => {
              const { value, fault } = perhapsNumberTyped(text, { low: 0, high: 30 });
              if (fault !== undefined) return fault;
              if (value === undefined) return 'write a number, or choose “As usual”.';
              return take((now) => setFlopIndex(now, value));
            }}
          />
          <fieldset className="flop-words">
            <legend className="unseen">Flop index in words</legend>
            <div className="buttons">
              {flopWords.map(({ id, name, flopIndex }) => (
                <button
                  key={id}
                  type="button"
                  className="button"
                  aria-pressed={finish.flopIndex === flopIndex}
                  onClick={() => take((now) => setFlopIndex(now, flopIndex))}
                >
                  {name}
                </button>
              ))}
            </div>
          </fieldset>
        </div>
      ) : null}
      {form === 'colours' ? (
        <>
          <ColourEntry
            label="Face: near the glare (15°)"
            colour={finish.face}
            hint="Its brightest. Empty: worked out."
            onColour={(colour) => take((now) => setFlopColour(now, 'face', colour))}
          />
          <ColourEntry
            label="Flop: far from it (110°)"
            colour={finish.flop}
            hint="Its darkest. Empty: worked out."
            onColour={(colour) => take((now) => setFlopColour(now, 'flop', colour))}
          />
        </>
      ) : null}
    </>
  );
}
