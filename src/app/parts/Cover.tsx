/**
 * Which parts of the car are sprayed as this one part, and how to spray them one by one, or others
 * with them. Rules and choices follow.
 */
import { useState } from 'react';
import type { Part } from '../../build/build.ts';
import { finishesByRef, usualFinish } from '../../build/build.ts';
import { joinParts, splitPart } from '../../build/edit/cover.ts';
import { listed } from '../../build/rule.ts';
import { pointAt } from '../pointing.ts';
import { edit, endStep, useWork } from '../store.ts';
import { carPartNames } from './bring.ts';
import { standingWords } from './standing.ts';

/** What a part covers. */
export function Cover({ part }: { part: Part }) {
  const { car } = useWork();
  const nameOf = carPartNames(car.sight.parts);
  const names = part.covers.map(nameOf);
  return (
    <section className="card-part" aria-labelledby="card-cover">
      <h3 id="card-cover">What it covers</h3>
      <p>
        {listed(names)}
        {names.length === 1 ? '.' : ', sprayed in one go.'}
      </p>
      <div className="buttons">
        {part.covers.length < 2 ? null : (
          <button
            type="button"
            className="button"
            onClick={() => {
              endStep();
              edit((build) => splitPart(build, part.id, nameOf));
            }}
          >
            Take apart into {part.covers.length} parts
          </button>
        )}
      </div>
      <Together part={part} />
    </section>
  );
}

/** Other parts to be sprayed in the same go. */
function Together({ part }: { part: Part }) {
  const { build } = useWork();
  const [chosen, setChosen] = useState<readonly string[]>([]);
  const others = build.parts.filter(({ id, absent }) => id !== part.id && !absent);
  const finishes = finishesByRef(build);
  const members = others.filter(({ id }) => chosen.includes(id));
  const names = members.map(({ name }) => name);
  if (others.length === 0 || part.absent) return null;
  return (
    <details>
      <summary>Spray together with other parts…</summary>
      <ul className="together" aria-label={`Spray together with ${part.name}`}>
        {others.map((other) => {
          const finish = finishes.get(usualFinish(other));
          return (
            <li
              key={other.id}
              onPointerEnter={() => pointAt([part.id, other.id], true)}
              onPointerLeave={() => pointAt([part.id], true)}
            >
              <label className="tick">
                <input
                  type="checkbox"
                  checked={chosen.includes(other.id)}
                  onChange={({ currentTarget: { checked } }) =>
                    setChosen(
                      checked ? [...chosen, other.id] : chosen.filter((id) => id !== other.id),
                    )
                  }
                />
                <span>
                  {other.name}{' '}
                  <small className="quiet">
                    {standingWords(other)}
                    {finish === undefined ? '' : `, ${finish.name}`}
                  </small>
                </span>
              </label>
            </li>
          );
        })}
      </ul>
      <p className="quiet" role="status">
        {names.length === 0
          ? 'Tick what goes on the same stick.'
          : `${listed(names)} will stand as ${part.name} does and wear what it wears.`}
      </p>
      <button
        type="button"
        className="button"
        disabled={members.length === 0}
        onClick={() => {
          endStep();
          edit((now) => joinParts(now, [part.id, ...members.map(({ id }) => id)]));
          setChosen([]);
        }}
      >
        Spray these together
      </button>
    </details>
  );
}
