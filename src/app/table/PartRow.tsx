/** One part and its spoon on every alternative; pointing at the row lights the part. */
import { memo } from 'react';
import { type EmbeddedFinish, isOpen, type Part, refOf } from '../../build/build.ts';
import type { LightId } from '../../colour/illuminant.ts';
import { lay } from '../overlay/overlay.ts';
import { standingWords } from '../parts/standing.ts';
import { Spoon } from '../pieces/Spoon.tsx';
import { ask, pointsAt, useIsLit, usePointing } from '../pointing.ts';
import { carries } from './carrying.ts';
import { startChoosing } from './choosing.ts';
import { Elsewhere } from './Elsewhere.tsx';

/** Whether a finish stands where another has been painted already. */
const meansStripping = (part: Part, ref: string): boolean =>
  !isOpen(part) && part.painted && part.finish !== ref;

/** What a part wears on one alternative; no finish while an open part has none to wear. */
export interface Cell {
  readonly alternative: string;
  readonly letter: string;
  readonly finish: EmbeddedFinish | undefined;
}
interface PartRowProps {
  readonly part: Part;
  readonly cells: readonly Cell[];
  readonly light: LightId;
}

const isSameCell = (one: Cell, other: Cell | undefined): boolean =>
  one.alternative === other?.alternative &&
  one.letter === other.letter &&
  one.finish === other.finish;

const isSameRow = (one: PartRowProps, other: PartRowProps): boolean =>
  one.part === other.part &&
  one.light === other.light &&
  one.cells.length === other.cells.length &&
  one.cells.every((cell, at) => isSameCell(cell, other.cells[at]));

/**
 * A row of the part table, and beneath it where else its colour appears, if asked. Drawn again only
 * where its part, a finish on it or the light has changed.
 */
export const PartRow = memo(function PartRow({ part, cells, light }: PartRowProps) {
  const isLit = useIsLit([part.id]);
  const isAsked = usePointing(({ asked }) => asked === part.id);
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
        {cells.map(({ alternative, letter, finish }) => (
          <td key={alternative}>
            <button
              type="button"
              className="cell"
              {...(finish && carries(refOf(finish)))}
              data-cell={`${alternative}/${part.id}`}
              aria-haspopup="dialog"
              onClick={({ currentTarget }) => startChoosing(alternative, part.id, currentTarget)}
            >
              <span className="unseen">
                {part.name} on {letter}:
              </span>
              {finish === undefined ? (
                'none'
              ) : (
                <Spoon
                  finish={finish}
                  light={light}
                  {...(meansStripping(part, refOf(finish)) && { note: 'means stripping first' })}
                />
              )}
            </button>
          </td>
        ))}
      </tr>
      {isAsked ? <Elsewhere part={part.id} /> : null}
    </>
  );
}, isSameRow);
