/** The scale of a model: one of the usual, or any other from 1:1 to 1:200. */
import { Choice } from '../pieces/Choice.tsx';
import { Field } from '../pieces/Field.tsx';
import { scaleFrom, usualScales } from './measures.ts';

interface ScaleProps {
  /** 24 for 1:24. */
  readonly value: number;
  readonly onChange: (scale: number) => void;
}

/** A row of scales with a field beneath. */
export const Scale = ({ value, onChange }: ScaleProps) => (
  <div className="measure">
    <Choice
      legend="Scale"
      value={value}
      options={usualScales.map((scale) => ({ value: scale, name: `1:${scale}` }))}
      onChoose={onChange}
    />
    <Field
      label="or any other"
      value={`1:${value}`}
      onType={(text) => {
        const scale = scaleFrom(text);
        if (scale === undefined) return 'a scale from 1:1 to 1:200, as in 1:35.';
        onChange(scale);
        return undefined;
      }}
    />
  </div>
);
