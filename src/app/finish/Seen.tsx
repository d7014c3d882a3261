/**
 * The finish as it is seen: a large test spoon, small ones under other lamps, and where on the cars
 * it shows. One that no part wears can be shown on a part for the eye only.
 */
import { useEffect, useState } from 'react';
import { letterOf, refOf } from '../../build/build.ts';
import type { LightId } from '../../colour/illuminant.ts';
import { largestPart } from '../cars/card/worn.ts';
import { kindOf, lookOf } from '../pieces/look.ts';
import { Bowl } from '../pieces/Spoon.tsx';
import { useWork } from '../store.ts';
import { useChoosing } from '../table/choosing.ts';
import { embeddedOf, type Live, wearersOf } from './live.ts';
import { Select } from './Select.tsx';
import { useTrying } from './trying.ts';

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

/** Where the cars wear it, and where they could for a look. */
function OnCars({ live: finish }: { live: ReturnType<typeof embeddedOf> }) {
  const { build, car } = useWork();
  const wearers = wearersOf(build, refOf(finish));
  const parts = build.parts.filter(({ absent }) => !absent);
  const [part, setPart] = useState(() => {
    if (wearers.length > 0) return nowhere;
    const chosen = useChoosing.getState().cell?.part;
    return chosen ?? largestPart(build, car.sight) ?? nowhere;
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
        onChoose={setPart}
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
