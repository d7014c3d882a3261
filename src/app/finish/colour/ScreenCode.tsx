/** The colour as a screen shows it: typed as a code, or picked. */
import { screenOf, setColour } from '../../../finish/edit/colour.ts';
import { hexTyped } from '../../../finish/edit/typed.ts';
import type { Colour } from '../../../finish/finish.ts';
import { Field } from '../../pieces/Field.tsx';
import type { Live } from '../live.ts';

/** Code and picker. */
export function ScreenCode({ live: { finish, take } }: { live: Live }) {
  const { hex } = screenOf(finish.colour);
  const isOther = !('srgb' in finish.colour);
  const put = (srgb: string): string | undefined => take((now) => setColour(now, { srgb }));
  return (
    <div className="screen-code">
      <Field
        label="Screen code (sRGB)"
        value={hex}
        hint={
          isOther
            ? `As near as a screen comes to the ${recordedAs(finish.colour)} on record. A code typed here takes their place.`
            : 'A screen colour says nothing of other lamps: how it looks under them is a likely guess.'
        }
        onType={(text) => {
          const { value, fault } = hexTyped(text);
          return value === undefined ? fault : put(value);
        }}
      />
      <label className="field picked">
        <span className="field-label">Pick</span>
        <input
          type="color"
          value={hex}
          onChange={({ currentTarget }) => put(currentTarget.value)}
        />
      </label>
    </div>
  );
}

const recordedAs = (colour: Colour): string =>
  'spectrum' in colour ? 'measured values' : 'Lab figures';
