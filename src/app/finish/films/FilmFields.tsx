/** What every film says: of which chemistry it is, and how many coats of it go on. */
import { numberTyped } from '../../../finish/edit/typed.ts';
import { type Chemistry, chemistries } from '../../../finish/finish.ts';
import { Field } from '../../pieces/Field.tsx';
import { Select } from '../Select.tsx';
import { chemistryNames } from '../words.ts';

const choices = chemistries.map((value) => ({ value, name: chemistryNames[value] }));

interface FilmFieldsProps {
  readonly chemistry: Chemistry;
  readonly coats: number;
  readonly onChange: (changes: { chemistry?: Chemistry; coats?: number }) => string | undefined;
  readonly coatsHint?: string;
}

/** Chemistry and coats of one film. */
export const FilmFields = ({ chemistry, coats, onChange, coatsHint }: FilmFieldsProps) => (
  <>
    <Select
      label="Chemistry"
      value={chemistry}
      choices={choices}
      onChoose={(chosen) => onChange({ chemistry: chosen })}
      hint={
        chemistry === 'urethane' ? 'Holds isocyanates: see what to mind at the bench.' : undefined
      }
    />
    <Field
      label="Coats"
      kind="number"
      value={String(coats)}
      hint={coatsHint}
      onType={(text) => {
        const { value, fault } = numberTyped(text, { low: 1, high: 20, isWhole: true });
        return value === undefined ? fault : onChange({ coats: value });
      }}
    />
  </>
);
