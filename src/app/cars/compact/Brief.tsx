/**
 * Beside small cars: under which lamp, from how far and from where they are seen, and a button that
 * shows the switches again. Only for mouse and finger: keys and screen readers reach the switches
 * themselves, which show as soon as they have the focus.
 */

import { useWork } from '../../store.ts';
import { lightName } from '../lamps.ts';
import { asksForWhole } from './compact.ts';

/** A few words and a button; nothing while the stage is whole. */
export function Brief({ place }: { place: string | undefined }) {
  const { light, distanceMm } = useWork().build.viewing;
  return (
    <div className="brief" aria-hidden="true">
      <p>
        {lightName(light)}, from {distanceMm / 1000} m
        {place === undefined ? '' : `, ${place.toLowerCase()}`}
      </p>
      <button type="button" className="toggle" tabIndex={-1} {...{ [asksForWhole]: '' }}>
        Show the switches
      </button>
    </div>
  );
}
