/** One of a few, as a row of words: native radio buttons, so arrow keys and screen readers work. */
import { useId } from 'react';

interface ChoiceProps<Value extends string | number> {
  readonly legend: string;
  readonly value: Value;
  readonly options: readonly {
    readonly value: Value;
    readonly name: string;
    readonly note?: string;
  }[];
  readonly onChoose: (value: Value) => void;
}

/** A labelled row of options, one of which is chosen. */
export function Choice<Value extends string | number>(props: ChoiceProps<Value>) {
  const { legend, value, options, onChoose } = props;
  const name = useId();
  const isNoted = options.some(({ note }) => note !== undefined);
  return (
    <fieldset className={isNoted ? 'choice choice-noted' : 'choice'}>
      <legend>{legend}</legend>
      <div className="choice-options">
        {options.map((option) => (
          <label key={option.value} title={option.note}>
            <input
              type="radio"
              name={name}
              checked={option.value === value}
              onChange={() => onChoose(option.value)}
            />
            <span>
              {option.name}
              {option.note === undefined ? null : <small>{option.note}</small>}
            </span>
          </label>
        ))}
      </div>
    </fieldset>
  );
}
