/**
 * The finish as it is seen: a large test spoon, small ones under other lamps, and where on the cars
 * it shows. One that no part wears can be shown on a part for the eye only: the part one came from to
 * begin with, and what is tried last is where it is offered to be put on.
 */
import { useEffect, useState } from 'react';
import { type FinishRef, letterOf, refOf } from '../../build/build.ts';
import type { LightId } from '../../colour/illuminant.ts';
import { useOverlay } from '../overlay/overlay.ts';
import { kindOf, lookOf } from '../pieces/look.ts';
import { Bowl } from '../pieces/Spoon.tsx';
import { useWork } from '../store.ts';
import { useChoosing } from '../table/choosing.ts';
import { embeddedOf, type Live, wearersOf } from './live.ts';
import { Select } from './Select.tsx';
import { meanFor, useTrying } from './trying.ts';

const lamps: readonly { light: LightId; name: string }[] = [
  { light: 'D65', name: 'Daylight' },
  { light: 'A', name: 'Warm lamp' },
  { light: 'LED-B3', name: 'LED' },
];
const lampNames: Readonly<Record<LightId, string>> = {
  D65: 'daylight',
  A: 'a warm lamp',
  'LED-B3': 'LED light',
  D50: 'warm daylight',
  FL11: 'a shop tube',
};

/** The head of the form. */
export function Seen({ live: { finish }, rack }: { live: Live; rack: string }) {
  const { build } = useWork();
  const { light } = build.viewing;
  const spoon = embeddedOf(rack, finish);
  const look = lookOf(finish, light);
  return (
    <div className="seen">
      <div className="seen-spoons">
        <div className="seen-tray">
          <figure className="seen-large">
            <Bowl finish={spoon} light={light} />
            <figcaption>
              {kindOf(finish, look)} by {lampNames[light]}
            </figcaption>
          </figure>
          <ul className="seen-lamps" aria-label="Under other lamps">
            {lamps.map((lamp) => (
              <li key={lamp.light}>
                <Bowl finish={spoon} light={lamp.light} />
                {lamp.name}
              </li>
            ))}
          </ul>
        </div>
      </div>
      <OnCars live={spoon} />
    </div>
  );
}

const nowhere = '';

/** The part whose cell or card is open, or for which the finish was meant on the rack. */
function cameFrom(ref: FinishRef): string | undefined {
  const { overlay } = useOverlay.getState();
  const { onto } = useTrying.getState();
  return (
    useChoosing.getState().cell?.part ??
    (overlay?.kind === 'part' ? overlay.part : undefined) ??
    (onto?.finish === ref ? onto.part : undefined)
  );
}

/** Where the cars wear it, and where they could for a look. */
function OnCars({ live: finish }: { live: ReturnType<typeof embeddedOf> }) {
  const { build } = useWork();
  const ref = refOf(finish);
  const wearers = wearersOf(build, ref);
  const parts = build.parts.filter(({ absent }) => !absent);
  const [part, setPart] = useState(() => {
    const from = wearers.length > 0 ? undefined : cameFrom(ref);
    return parts.some(({ id }) => id === from) ? (from ?? nowhere) : nowhere;
  });
  useEffect(() => {
    useTrying.setState({ trying: part === nowhere ? undefined : { part, finish } });
  }, [part, finish]);
  useEffect(() => () => useTrying.setState({ trying: undefined }), []);
  const worn = wearers.map(({ name, on }) =>
    on.length === build.alternatives.length ? name : `${name} (${on.map(letterOf).join(', ')})`,
  );
  return (
    <div className="seen-on">
      <Select
        label="Show on the car"
        value={part}
        choices={[
          { value: nowhere, name: wearers.length > 0 ? 'Only where it is worn' : 'Nowhere' },
          ...parts.map(({ id, name }) => ({ value: id, name })),
        ]}
        onChoose={(to) => {
          setPart(to);
          meanFor(ref, to === nowhere ? undefined : to);
        }}
      />
      <p role="status">
        {worn.length === 0 ? 'No part of this build wears it. ' : `Worn on ${worn.join(', ')}. `}
        {part === nowhere
          ? ''
          : 'Shown for a look only: the build and its scores stay as they are.'}
      </p>
    </div>
  );
}
