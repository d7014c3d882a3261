/** One part and its spoon on every alternative; pointing at the row lights the part. */
import { finishesByRef, isOpen, type Part } from '../../build/build.ts';
import { useStaged } from '../onStage.ts';
import { lay } from '../overlay/overlay.ts';
import { standingWords } from '../parts/standing.ts';
import { Spoon } from '../pieces/Spoon.tsx';
import { ask, pointsAt, useIsLit, usePointing } from '../pointing.ts';
import { useWork } from '../store.ts';
import { carries } from './carrying.ts';
import { startChoosing } from './choosing.ts';
import { Elsewhere } from './Elsewhere.tsx';
import type { Row } from './rows.ts';

/** Whether a finish stands where another has been painted already. */
const meansStripping = (part: Part, ref: string): boolean =>
  !isOpen(part) && part.painted && part.finish !== ref;

/** A row of the part table, and beneath it where else its colour appears, if asked. */
export function PartRow({ row: { part, refs } }: { row: Row }) {
  const { build } = useWork();
  const staged = useStaged();
  const isLit = useIsLit([part.id]);
  const isAsked = usePointing(({ asked }) => asked === part.id);
  const finishes = finishesByRef(build);
  return (
    <>
      <tr className={isLit ? 'is-lit' : undefined} {...pointsAt([part.id])}>
        <th scope="row">
          <button
            type="button"
            className="part-name"
            aria-expanded={isAsked}
            onClick={() => ask(part.id)}
          >
            <bdi>{part.name}</bdi>
            <span className="unseen">: where else does this colour appear?</span>
          </button>
          <button
            type="button"
            className="part-standing"
            aria-haspopup="dialog"
            title="How it stands, its candidates and what it covers"
            onClick={() => lay({ kind: 'part', part: part.id })}
          >
            {standingWords(part)}
            <span className="unseen">: the card of {part.name}</span>
          </button>
        </th>
        {staged.map(({ alternative, letter }, column) => {
          const ref = refs[column] ?? '';
          const finish = finishes.get(ref);
          return (
            <td key={alternative.id}>
              <button
                type="button"
                className="cell"
                {...(finish && carries(ref))}
                data-cell={`${alternative.id}/${part.id}`}
                aria-haspopup="dialog"
                onClick={({ currentTarget }) =>
                  startChoosing(alternative.id, part.id, currentTarget)
                }
              >
                <span className="unseen">
                  {part.name} on {letter}:
                </span>
                {finish === undefined ? (
                  'none'
                ) : (
                  <Spoon
                    finish={finish}
                    light={build.viewing.light}
                    {...(meansStripping(part, ref) && { note: 'means stripping first' })}
                  />
                )}
              </button>
            </td>
          );
        })}
      </tr>
      {isAsked ? <Elsewhere part={part.id} /> : null}
    </>
  );
}
