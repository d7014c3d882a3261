/** From how far the model is looked at: one of the usual distances, or any other. */
import { distances } from '../cars/lamps.ts';
import { Choice } from '../pieces/Choice.tsx';
import { Field } from '../pieces/Field.tsx';
import { distanceFrom, distanceWords } from './measures.ts';

interface DistanceProps {
  readonly value: number;
  readonly onChange: (distanceMm: number) => void;
}

/** A row of distances with a field beneath. */
export const Distance = ({ value, onChange }: DistanceProps) => (
  <div className="measure">
    <Choice legend="Looked at from" value={value} options={distances} onChoose={onChange} />
    <Field
      label="or any other"
      value={distanceWords(value)}
      onType={(text) => {
        const distance = distanceFrom(text);
        if (distance === undefined) return 'a distance from 5 cm to 20 m, as in 60 cm.';
        onChange(distance);
        return undefined;
      }}
    />
  </div>
);
