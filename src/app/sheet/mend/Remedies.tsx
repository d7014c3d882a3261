/**
 * Remedies as buttons that do them. Each says beforehand what it would change, and shows it on its
 * car while it is pointed at or has the focus; pressing it is one step of undo.
 */
import { useEffect, useId, useMemo } from 'react';
import type { ScoreSheet } from '../../../score/comparison.ts';
import { type Remedy, withChanges } from '../../../score/remedy/remedy.ts';
import { sayDone } from '../../pieces/said.ts';
import { pointAt } from '../../pointing.ts';
import { edit, endStep } from '../../store.ts';
import { useFollowed, withheld } from '../withheld.ts';
import { previewOf, usePreviewing } from './previewing.ts';
import { useRoom } from './room.ts';
import { useRemedies } from './suggested.ts';
import './mend.css';

export interface RemediesProps {
  readonly sheet: ScoreSheet;
  /** Place of the finding in the evidence of the sheet. */
  readonly at: number;
  /** Places of the findings read before it; what mends one of them is offered there. */
  readonly after?: readonly number[];
  /** Only the first remedy, where room is short. */
  readonly isBrief?: boolean;
}

/** The best remedy of a finding, and the others folded. */
export function Remedies({ sheet, at, after, isBrief = false }: RemediesProps) {
  const all = useRemedies(sheet.id);
  const found = useMemo(() => all && waysIn(all, at, after ?? []), [all, at, after]);
  const { answer, isWithheld } = useFollowed([sheet], found);
  const place = useRoom(isBrief && answer?.first !== undefined, isWithheld);
  if (answer?.first === undefined) return null;
  const { first, isOffered, others } = answer;
  return (
    <div className="remedies" ref={place} hidden={isBrief && isWithheld} {...withheld(isWithheld)}>
      {isOffered ? (
        <p className="remedy remedy-told">“{first.label}”, above, mends this too.</p>
      ) : (
        <Way alternative={sheet.id} remedy={first} />
      )}
      {isBrief || others.length === 0 ? null : (
        <details>
          <summary>{others.length === 1 ? 'Another way' : `${others.length} other ways`}</summary>
          {others.map((remedy) => (
            <Way key={remedy.label} alternative={sheet.id} remedy={remedy} />
          ))}
        </details>
      )}
    </div>
  );
}

/** The remedies of one finding, what is offered above it left out. */
function waysIn(all: readonly (readonly Remedy[])[], at: number, after: readonly number[]) {
  const offered = new Set(after.flatMap((earlier) => all[earlier]?.[0]?.label ?? []));
  const [first, ...rest] = all[at] ?? [];
  return {
    first,
    isOffered: first !== undefined && offered.has(first.label),
    others: rest.filter(({ label }) => !offered.has(label)),
  };
}

/** Where the mouse was last; a button that comes to lie under a resting one is not pointed at. */
let resting: { readonly clientX: number; readonly clientY: number } | undefined;
document.addEventListener('pointermove', ({ clientX, clientY }) => {
  resting = { clientX, clientY };
});
const isMoved = ({ clientX, clientY }: { clientX: number; clientY: number }): boolean =>
  resting?.clientX !== clientX || resting.clientY !== clientY;

const isShown = (changes: Remedy['changes']): boolean =>
  usePreviewing.getState().preview?.changes === changes;

function Way({ alternative, remedy }: { alternative: string; remedy: Remedy }) {
  const told = useId();
  const { changes, label, effect } = remedy;
  const show = (): void => {
    pointAt(
      changes.map(({ part }) => part),
      true,
    );
    previewOf({ alternative, changes, label });
  };
  const hide = (): void => {
    pointAt([]);
    previewOf(undefined);
  };
  // Taken away by a change that came from elsewhere, it leaves nothing on the car.
  useEffect(
    () => () => {
      if (isShown(changes)) previewOf(undefined);
    },
    [changes],
  );
  const press = (button: HTMLElement): void => {
    const home = button.closest<HTMLElement>('[data-mends]');
    hide();
    endStep();
    edit((build) => withChanges(build, alternative, changes));
    endStep();
    sayDone(`Done: ${label}. Overall ${Math.round(effect.overall.after)}.`);
    // The button goes with its finding; the focus stays where it was pressed.
    home?.focus({ preventScroll: true });
  };
  return (
    <p className="remedy">
      <button
        type="button"
        className="button remedy-button"
        aria-describedby={told}
        onPointerMove={(event) => {
          if (event.pointerType !== 'touch' && isMoved(event) && !isShown(changes)) show();
        }}
        onPointerLeave={hide}
        onFocus={({ target }) => {
          if (target.matches(':focus-visible')) show();
        }}
        onBlur={hide}
        onClick={({ currentTarget }) => press(currentTarget)}
      >
        {label}
      </button>
      <span id={told} className="remedy-told">
        {remedy.told}.
      </span>
    </p>
  );
}
