/**
 * One thing to fill in: its name above, what it means and what is wrong with it beneath. What is
 * typed stays as typed; only what can be used is handed on.
 */
import { type ReactNode, useEffect, useId, useRef, useState } from 'react';

interface FieldProps {
  readonly label: string;
  /** The value as it stands now, as text. */
  readonly value: string;
  /** Takes what was typed; the answer says what is wrong with it, or nothing. */
  readonly onType: (text: string) => string | undefined;
  readonly hint?: ReactNode;
  readonly kind?: 'text' | 'number' | 'date' | 'search';
  /** What stands behind the value: mm, GU. */
  readonly unit?: string;
  readonly lines?: number;
  readonly list?: readonly string[];
}

/** A text field that follows its value but never takes what is being typed away. */
export function Field(props: FieldProps) {
  const { label, value, onType, hint, kind = 'text', unit, lines, list } = props;
  const id = useId();
  const [typed, setTyped] = useState(value);
  const [fault, setFault] = useState<string>();
  const isOwn = useRef(false);
  // A value that changed elsewhere, by undo for example, is shown; one's own typing is left alone.
  useEffect(() => {
    if (isOwn.current) return;
    setTyped(value);
    setFault(undefined);
  }, [value]);
  const take = (text: string): void => {
    isOwn.current = true;
    setTyped(text);
    setFault(onType(text));
  };
  const leave = (): void => {
    isOwn.current = false;
    if (fault === undefined) setTyped(value);
  };
  const common = {
    id,
    value: typed,
    'aria-invalid': fault !== undefined,
    'aria-describedby': `${id}-told`,
    onBlur: leave,
  } as const;
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      <span className="field-entry">
        {lines === undefined ? (
          <input
            {...common}
            type={kind === 'number' ? 'text' : kind}
            inputMode={kind === 'number' ? 'decimal' : undefined}
            dir={kind === 'text' || kind === 'search' ? 'auto' : undefined}
            list={list === undefined ? undefined : `${id}-list`}
            autoComplete="off"
            onChange={({ currentTarget }) => take(currentTarget.value)}
          />
        ) : (
          <textarea
            {...common}
            dir="auto"
            rows={lines}
            onChange={({ currentTarget }) => take(currentTarget.value)}
          />
        )}
        {unit === undefined ? null : <span className="field-unit">{unit}</span>}
      </span>
      {list === undefined ? null : (
        <datalist id={`${id}-list`}>
          {list.map((one) => (
            <option key={one} value={one} />
          ))}
        </datalist>
      )}
      <p id={`${id}-told`} className={fault === undefined ? 'field-hint' : 'field-fault'}>
        {fault ?? hint}
      </p>
    </div>
  );
}
