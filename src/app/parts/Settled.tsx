/** The finish of a settled part, and another in its place. */
import { type FinishRef, finishesByRef, letterOf, type Part, refOf } from '../../build/build.ts';
import { embed } from '../../build/edit/finish.ts';
import { giveFinish } from '../../build/edit/part.ts';
import { listed } from '../../build/rule.ts';
import { Spoon } from '../pieces/Spoon.tsx';
import { edit, useWork } from '../store.ts';
import { Picking } from './Picking.tsx';

interface SettledProps {
  readonly part: Part;
  readonly finish: FinishRef;
}

/** What a settled part wears. */
export function Settled({ part, finish: ref }: SettledProps) {
  const { build } = useWork();
  const finish = finishesByRef(build).get(ref);
  const departing = build.alternatives.flatMap(({ choices }, at) =>
    choices[part.id] === undefined || choices[part.id] === ref ? [] : [letterOf(at)],
  );
  return (
    <section className="card-part" aria-labelledby="card-finish">
      <h3 id="card-finish">Its finish</h3>
      {finish === undefined ? null : <Spoon finish={finish} light={build.viewing.light} />}
      {departing.length === 0 ? null : (
        <p className="quiet">{listed(departing)} wears another, chosen in the part table.</p>
      )}
      <Picking
        words="Choose another finish…"
        label={`Finish of ${part.name}`}
        chosen={ref}
        onPick={(picked) =>
          edit(
            (now) => giveFinish(embed(now, picked), part.id, refOf(picked)),
            `finish of ${part.id}`,
          )
        }
      />
    </section>
  );
}
