/** A colour in one field, for films: a screen code, Lab figures, or picked. */
import { colourTyped, screenOf } from '../../../finish/edit/colour.ts';
import type { Colour } from '../../../finish/finish.ts';
import { cellFromColour } from '../../../finish/text/cell.ts';
import { Field } from '../../pieces/Field.tsx';

interface ColourEntryProps {
  readonly label: string;
  /** Undefined: none is recorded. */
  readonly colour: Colour | undefined;
  readonly onColour: (colour: Colour) => string | undefined;
  readonly hint?: string;
}

/** Field and picker. */
export function ColourEntry({ label, colour, onColour, hint }: ColourEntryProps) {
  const isMeasured = colour !== undefined && 'spectrum' in colour;
  const hex = colour === undefined ? '#808080' : screenOf(colour).hex;
  return (
    <div className="screen-code">
      <Field
        label={label}
        value={colour === undefined ? '' : isMeasured ? hex : cellFromColour(colour)}
        hint={isMeasured ? 'Measured as a spectrum; typing here replaces that.' : hint}
        onType={(text) => {
          const { value, fault } = colourTyped(text);
          return value === undefined ? fault : onColour(value);
        }}
      />
      <label className="field picked">
        <span className="field-label">
          Pick<span className="unseen"> {label}</span>
        </span>
        <input
          type="color"
          value={hex}
          onChange={({ currentTarget }) => onColour({ srgb: currentTarget.value })}
        />
      </label>
    </div>
  );
}
