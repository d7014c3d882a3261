/** The blanks of a rule: native lists of parts and finishes, numbers, a date. */
import { useId } from 'react';
import { type FinishRef, finishesByRef, isOpen, type Part } from '../../build/build.ts';
import { Bowl } from '../pieces/Spoon.tsx';
import { useWork } from '../store.ts';
import { finishesFor } from './draft.ts';

interface PartBlankProps {
  readonly label: string;
  readonly part: string;
  /** What an empty blank says. */
  readonly empty?: string;
  /** Parts that stand in other blanks already. */
  readonly taken?: readonly string[];
  readonly onChoose: (part: string) => void;
}

/** One part of the build: open ones first. */
export function PartBlank(props: PartBlankProps) {
  const { label, part, empty = 'a part …', taken = [], onChoose } = props;
  const { build } = useWork();
  const offered = build.parts.filter(
    ({ id, absent }) => id === part || (!absent && !taken.includes(id)),
  );
  const list = (title: string, parts: readonly Part[]) =>
    parts.length === 0 ? null : (
      <optgroup label={title}>
        {parts.map(({ id, name }) => (
          <option key={id} value={id}>
            {name}
          </option>
        ))}
      </optgroup>
    );
  return (
    <select
      className="blank"
      aria-label={label}
      value={part}
      onChange={({ currentTarget }) => onChoose(currentTarget.value)}
    >
      <option value="">{empty}</option>
      {list('Open', offered.filter(isOpen))}
      {list(
        'Settled',
        offered.filter((one) => !isOpen(one)),
      )}
    </select>
  );
}

interface FinishBlankProps {
  readonly label: string;
  /** The part whose finish it is. */
  readonly part: string;
  readonly finish: FinishRef;
  readonly onChoose: (finish: FinishRef) => void;
}

/** One finish that a part can wear, with its bowl beside. */
export function FinishBlank({ label, part, finish, onChoose }: FinishBlankProps) {
  const { build } = useWork();
  const finishes = finishesByRef(build);
  const worn = finishesFor(
    build,
    build.parts.find(({ id }) => id === part),
  );
  const gone = finish !== '' && !worn.includes(finish);
  const chosen = finishes.get(finish);
  return (
    <span className="blank-finish">
      {chosen === undefined ? null : <Bowl finish={chosen} light={build.viewing.light} />}
      <select
        className="blank"
        aria-label={label}
        value={finish}
        disabled={part === ''}
        onChange={({ currentTarget }) => onChoose(currentTarget.value)}
      >
        <option value="">{part === '' ? 'its finish …' : 'a finish …'}</option>
        {worn.map((ref) => (
          <option key={ref} value={ref}>
            {finishes.get(ref)?.name ?? ref}
          </option>
        ))}
        {gone ? <option value={finish}>{chosen?.name ?? finish} (no candidate)</option> : null}
      </select>
    </span>
  );
}

interface FinishesBlankProps {
  readonly label: string;
  readonly part: string;
  readonly chosen: readonly FinishRef[];
  readonly onChoose: (chosen: readonly FinishRef[]) => void;
}

/** Several finishes of one part, any of which will do. */
export function FinishesBlank({ label, part, chosen, onChoose }: FinishesBlankProps) {
  const { build } = useWork();
  const finishes = finishesByRef(build);
  const worn = finishesFor(
    build,
    build.parts.find(({ id }) => id === part),
  );
  const all = [...new Set([...worn, ...chosen])];
  if (part === '') return <p className="quiet">Choose the part, and its finishes stand here.</p>;
  return (
    <fieldset className="blank-finishes">
      <legend className="unseen">{label}</legend>
      {all.map((ref) => {
        const finish = finishes.get(ref);
        return (
          <label key={ref} className="tick">
            <input
              type="checkbox"
              checked={chosen.includes(ref)}
              onChange={({ currentTarget }) =>
                onChoose(
                  currentTarget.checked ? [...chosen, ref] : chosen.filter((one) => one !== ref),
                )
              }
            />
            <span className="chip-finish">
              {finish === undefined ? null : <Bowl finish={finish} light={build.viewing.light} />}
              <span>
                {finish?.name ?? ref}
                {worn.includes(ref) ? '' : ' (no candidate)'}
              </span>
            </span>
          </label>
        );
      })}
    </fieldset>
  );
}

interface TypedBlankProps {
  readonly label: string;
  readonly value: string;
  readonly kind: 'number' | 'date';
  readonly describedBy: string;
  readonly onType: (text: string) => void;
}

/** A number or a date. */
export function TypedBlank({ label, value, kind, describedBy, onType }: TypedBlankProps) {
  const id = useId();
  return (
    <input
      id={id}
      className={`blank blank-${kind}`}
      type={kind === 'date' ? 'date' : 'text'}
      inputMode={kind === 'number' ? 'decimal' : undefined}
      aria-label={label}
      aria-describedby={describedBy}
      autoComplete="off"
      value={value}
      onChange={({ currentTarget }) => onType(currentTarget.value)}
    />
  );
}
