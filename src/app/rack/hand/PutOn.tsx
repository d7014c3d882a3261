/**
 * Puts the finish in the hand on a part of an alternative, for keyboard and touch; by mouse the
 * spoon can be dragged there too. A finish of a rack comes into the build with that.
 */
import { useId, useState } from 'react';
import {
  assignmentOf,
  type Build,
  type EmbeddedFinish,
  isOpen,
  letterOf,
  type Part,
  refOf,
} from '../../../build/build.ts';
import { sayDone } from '../../pieces/said.ts';
import { pointAt } from '../../pointing.ts';
import { chooseFrom, endStep, useWork } from '../../store.ts';

/** Part, alternative, and the button that does it. */
export function PutOn({ finish }: { finish: EmbeddedFinish }) {
  const { build } = useWork();
  const id = useId();
  const parts = build.parts.filter(({ absent }) => !absent);
  const [partId, setPart] = useState<string>();
  const [alternativeId, setAlternative] = useState<string>();
  const part = parts.find((one) => one.id === partId) ?? parts.find(isOpen) ?? parts[0];
  const { alternatives } = build;
  const at = Math.max(
    0,
    alternatives.findIndex((one) => one.id === alternativeId),
  );
  const alternative = alternatives[at];
  if (part === undefined || alternative === undefined) {
    return <p className="quiet">This build has no alternative to put it on yet.</p>;
  }
  const isWorn = assignmentOf(build, alternative).get(part.id) === refOf(finish);
  const put = (): void => {
    endStep();
    chooseFrom(alternative.id, part.id, finish);
    endStep();
    sayDone(`${finish.name} is on ${part.name} of ${letterOf(at)}.`);
  };
  return (
    <form
      className="put-on"
      onSubmit={(event) => {
        event.preventDefault();
        if (!isWorn) put();
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
          onChange={({ currentTarget }) => {
            setPart(currentTarget.value);
            pointAt([currentTarget.value]);
          }}
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
          value={alternative.id}
          onChange={({ currentTarget }) => setAlternative(currentTarget.value)}
        >
          {alternatives.map((one, position) => (
            <option key={one.id} value={one.id}>
              {letterOf(position)} {one.name}
            </option>
          ))}
        </select>
      </div>
      <button type="submit" className="button button-strong" aria-disabled={isWorn}>
        Put on
      </button>
      <p className="put-on-means">{meaningOf(build, part, isWorn)}</p>
    </form>
  );
}

/** What it would mean, where that is more than another spoon. */
function meaningOf(build: Build, part: Part, isWorn: boolean): string {
  if (isWorn) return 'It wears that already.';
  if (isOpen(part)) return '';
  if (part.painted) return 'Painted already: another finish means stripping it first.';
  return build.alternatives.length > 1
    ? 'Settled: this alternative alone would depart from that.'
    : 'Settled: this alternative would depart from that.';
}
