/** One of several in a drop-down list, its name above and what it means beneath. */
import { type ReactNode, useId } from 'react';

interface SelectProps<Value extends string> {
  readonly label: string;
  readonly value: Value;
  readonly choices: readonly { readonly value: Value; readonly name: string }[];
  readonly onChoose: (value: Value) => void;
  readonly hint?: ReactNode;
}

/** A labelled native list. */
export function Select<Value extends string>(props: SelectProps<Value>) {
  const { label, value, choices, onChoose, hint } = props;
  const id = useId();
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      <span className="field-entry">
        <select
          id={id}
          value={value}
          aria-describedby={`${id}-told`}
          onChange={({ currentTarget }) => onChoose(currentTarget.value as Value)}
        >
          {choices.map((choice) => (
            <option key={choice.value} value={choice.value}>
              {choice.name}
            </option>
          ))}
        </select>
      </span>
      <p id={`${id}-told`} className="field-hint">
        {hint}
      </p>
    </div>
  );
}
