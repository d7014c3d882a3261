/**
 * Puts the finish in the hand on a part, of one alternative or of all, for keyboard and touch; by
 * mouse the spoon can be dragged there too. What is settled stays one thing on all alternatives unless
 * one of them is asked for. A finish of a rack comes into the build with that.
 */
import { useId, useState } from 'react';
import {
  assignmentOf,
  type EmbeddedFinish,
  isOpen,
  letterOf,
  type Part,
  refOf,
} from '../../../build/build.ts';
import { meanFor, useTrying } from '../../finish/trying.ts';
import { pointAt } from '../../pointing.ts';
import { useWork } from '../../store.ts';
import { isOnAll, putOnAll, putOnOne } from '../../table/putting.ts';

/** Stands for all alternatives; no id can be it. */
const all = '*';

/** Part, alternative, and the button that does it. */
export function PutOn({ finish }: { finish: EmbeddedFinish }) {
  const { build } = useWork();
  const id = useId();
  const ref = refOf(finish);
  const parts = build.parts.filter(({ absent }) => !absent);
  const meant = useTrying(({ onto }) => (onto?.finish === ref ? onto.part : undefined));
  const [where, setWhere] = useState<string>();
  const part = parts.find((one) => one.id === meant) ?? parts.find(isOpen) ?? parts[0];
  const { alternatives } = build;
  if (part === undefined || alternatives[0] === undefined) {
    return <p className="quiet">This build has no alternative to put it on yet.</p>;
  }
  const chosen = alternatives.find((one) => one.id === where);
  const alternative =
    where === all || (chosen === undefined && !isOpen(part))
      ? undefined
      : (chosen ?? alternatives[0]);
  const isWorn =
    alternative === undefined
      ? isOnAll(build, part, finish)
      : assignmentOf(build, alternative).get(part.id) === ref;
  const put = (): void => {
    if (isWorn) return;
    if (alternative === undefined) putOnAll(finish, part);
    else putOnOne(finish, part, alternative.id);
  };
  const pick = (chosenPart: string): void => {
    meanFor(ref, chosenPart);
    pointAt([chosenPart]);
  };
  const ofAll =
    alternatives.length < 2 && isOpen(part) ? null : <option value={all}>{allOf(part)}</option>;
  return (
    <form
      className="put-on"
      onSubmit={(event) => {
        event.preventDefault();
        put();
      }}
      onBlur={() => pointAt([])}
    >
      <div className="filter">
        <label htmlFor={`${id}-part`}>Put it on</label>
        <select
          id={`${id}-part`}
          className="entry"
          value={part.id}
          onFocus={() => pointAt([part.id])}
          onChange={({ currentTarget }) => pick(currentTarget.value)}
        >
          {parts.map((one) => (
            <option key={one.id} value={one.id}>
              {one.name}
            </option>
          ))}
        </select>
      </div>
      <div className="filter put-on-which">
        <label htmlFor={`${id}-which`}>of</label>
        <select
          id={`${id}-which`}
          className="entry"
          value={alternative?.id ?? all}
          onChange={({ currentTarget }) => setWhere(currentTarget.value)}
        >
          {isOpen(part) ? null : ofAll}
          {alternatives.map((one, position) => (
            <option key={one.id} value={one.id}>
              {letterOf(position)} {isOpen(part) ? one.name : `only (${one.name})`}
            </option>
          ))}
          {isOpen(part) ? ofAll : null}
        </select>
      </div>
      <button type="submit" className="button button-strong" aria-disabled={isWorn}>
        Put on
      </button>
      <p className="put-on-means">
        {isWorn
          ? 'It wears that already.'
          : meaningOf(part, alternative && letterOf(alternatives.indexOf(alternative)))}
      </p>
    </form>
  );
}

const allOf = (part: Part): string =>
  isOpen(part) ? 'All of them' : part.painted ? 'All' : 'All, as settled';

/** What it would mean, where that is more than another spoon; no letter stands for all of them. */
function meaningOf(part: Part, letter: string | undefined): string {
  if (isOpen(part)) return '';
  const which = letter === undefined ? '' : `, for ${letter} only`;
  if (part.painted) return `Painted already: another finish means stripping it first${which}.`;
  return letter === undefined
    ? 'Settled: every alternative wears this one from then on.'
    : `Settled: ${letter} alone would depart from that.`;
}
