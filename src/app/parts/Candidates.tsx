/**
 * What an open part may wear: its candidates as spoons, each told who wears it, and the way from
 * candidates to alternatives that can be compared.
 */
import { type Build, finishesByRef, letterOf, type OpenPart, refOf } from '../../build/build.ts';
import { alternativePerCandidate } from '../../build/edit/alternative.ts';
import { embed } from '../../build/edit/finish.ts';
import { giveFinish, setCandidate } from '../../build/edit/part.ts';
import { listed } from '../../build/rule.ts';
import { PerShared } from '../alternatives/PerShared.tsx';
import { kindOf, lookOf } from '../pieces/look.ts';
import { Spoon } from '../pieces/Spoon.tsx';
import { edit, endStep, useWork } from '../store.ts';
import { Picking } from './Picking.tsx';

/** The candidates of one open part. */
export function Candidates({ part }: { part: OpenPart }) {
  const { build } = useWork();
  const { light } = build.viewing;
  const finishes = finishesByRef(build);
  return (
    <section className="card-part" aria-labelledby="card-candidates">
      <h3 id="card-candidates">Candidates</h3>
      <ul className="candidates" aria-label={`Candidates of ${part.name}`}>
        {part.candidates.map((ref) => {
          const finish = finishes.get(ref);
          if (finish === undefined) return null;
          const worn = wearersOf(build, part, ref);
          const kind = kindOf(finish, lookOf(finish, light));
          return (
            <li key={ref}>
              <Spoon finish={finish} light={light} note={worn === '' ? kind : `${kind}; ${worn}`} />
              <button
                type="button"
                className="text-button"
                disabled={part.candidates.length === 1}
                title={
                  part.candidates.length === 1
                    ? 'The last candidate stays; add another first'
                    : undefined
                }
                onClick={() => {
                  endStep();
                  edit((now) => setCandidate(now, part.id, ref, false));
                }}
              >
                Take out<span className="unseen"> {finish.name}</span>
              </button>
            </li>
          );
        })}
      </ul>
      <Picking
        words="Add candidates…"
        label={`Candidates of ${part.name}`}
        onPick={(picked) => {
          endStep();
          edit((now) => giveFinish(embed(now, picked), part.id, refOf(picked)));
        }}
      />
      <PerShared part={part.id} />
      <Spread part={part} />
    </section>
  );
}

/** `on A and C`; empty where no alternative wears it. */
function wearersOf(build: Build, part: OpenPart, ref: string): string {
  const letters = build.alternatives.flatMap(({ choices }, at) =>
    choices[part.id] === ref ? [letterOf(at)] : [],
  );
  return letters.length === 0 ? '' : `on ${listed(letters)}`;
}

/** Makes an alternative for each candidate that none wears yet. */
function Spread({ part }: { part: OpenPart }) {
  const { build } = useWork();
  const worn = new Set(build.alternatives.map(({ choices }) => choices[part.id]));
  const fresh = part.candidates.filter((ref) => !worn.has(ref));
  if (fresh.length === 0) return null;
  const rest = build.alternatives.length === 0 ? '' : ', like A in all else';
  return (
    <div className="spread">
      <p>
        {fresh.length === 1 ? 'One candidate is' : `${fresh.length} candidates are`} worn by no
        alternative yet.
      </p>
      <button
        type="button"
        className="button"
        onClick={() => {
          endStep();
          edit((now) => alternativePerCandidate(now, part.id));
        }}
      >
        {fresh.length === 1 ? 'Add an alternative with it' : `Add ${fresh.length} alternatives`}
        {rest}
      </button>
    </div>
  );
}
