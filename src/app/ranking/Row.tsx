/** One combination: its place, its overall, a spoon a part, what is to be bought, why it stands here. */
import { memo } from 'react';
import type { EmbeddedFinish, FinishRef } from '../../build/build.ts';
import type { LightId } from '../../colour/illuminant.ts';
import type { RankedRow } from '../../ranking/ranking.ts';
import { goToCar } from '../commands/go.ts';
import { Bar } from '../pieces/Bar.tsx';
import { Spoon } from '../pieces/Spoon.tsx';
import { putOnStage } from './put.ts';

export interface Cell {
  readonly part: string;
  readonly name: string;
  readonly finish: EmbeddedFinish | undefined;
  /** The row above wears another finish there; so it is in the first row. */
  readonly isNew: boolean;
}

export interface RowProps {
  /** Counted from 1. */
  readonly number: number;
  readonly row: RankedRow;
  readonly cells: readonly Cell[];
  readonly light: LightId;
  readonly choices: Readonly<Record<string, FinishRef>>;
  /** Letter and id of the alternative that wears this already. */
  readonly letter: string | undefined;
  readonly standsAs: string | undefined;
  /** The build still allows it. */
  readonly canStand: boolean;
  /** Why it stands above the next. */
  readonly why: string | undefined;
  /** That it is too close to the next to call, where it is. */
  readonly close: string | undefined;
  readonly toBuy: string;
}

/** Drawn again only where something of it is told otherwise. */
const isSame = (one: RowProps, other: RowProps): boolean =>
  one.number === other.number &&
  one.light === other.light &&
  one.letter === other.letter &&
  one.canStand === other.canStand &&
  one.row.sheet.overall === other.row.sheet.overall &&
  one.why === other.why &&
  one.close === other.close &&
  one.toBuy === other.toBuy &&
  one.cells.length === other.cells.length &&
  one.cells.every(
    ({ part, finish, isNew }, at) =>
      part === other.cells[at]!.part &&
      finish === other.cells[at]!.finish &&
      isNew === other.cells[at]!.isNew,
  );

/** Two lines of the table that belong together. */
export const RowLines = memo(function RowLines(props: RowProps) {
  const { number, cells, light } = props;
  return (
    <tbody className="ranking-lines">
      <tr>
        <th scope="row" rowSpan={2} className="ranking-cell is-first">
          <span className="ranking-number">{number}</span>
        </th>
        <td rowSpan={2} className="ranking-cell">
          <Overall {...props} />
        </td>
        {cells.map((cell) => (
          <td key={cell.part} className="ranking-cell">
            <Worn {...cell} light={light} isFirst={number === 1} />
          </td>
        ))}
        <td rowSpan={2} className="ranking-cell is-last">
          <PutOn {...props} />
        </td>
      </tr>
      <tr>
        <td colSpan={cells.length} className="ranking-cell is-told">
          <Said {...props} />
        </td>
      </tr>
    </tbody>
  );
}, isSame);

/** The same as a card. */
export const RowCard = memo(function RowCard(props: RowProps) {
  const { number, cells, light } = props;
  return (
    <li className="ranking-card">
      <p className="ranking-card-head">
        <span className="ranking-number">{number}</span>
        <span className="ranking-overall">
          <Overall {...props} />
        </span>
      </p>
      <ul className="ranking-worn">
        {cells.map((cell) => (
          <li key={cell.part}>
            <span className="ranking-part">
              <bdi>{cell.name}</bdi>
            </span>
            <Worn {...cell} light={light} isFirst={number === 1} />
          </li>
        ))}
      </ul>
      <Said {...props} />
      <PutOn {...props} />
    </li>
  );
}, isSame);

function Overall({ row }: RowProps) {
  const { overall } = row.sheet;
  return (
    <>
      <span className="ranking-value">{overall.toFixed(1)}</span>
      <Bar value={overall} />
    </>
  );
}

interface WornProps extends Cell {
  readonly light: LightId;
  /** There is no row above. */
  readonly isFirst: boolean;
}

function Worn({ finish, isNew, light, isFirst }: WornProps) {
  if (finish === undefined) return <>none</>;
  return (
    <span className={isNew ? 'ranking-spoon' : 'ranking-spoon is-same'}>
      <Spoon finish={finish} light={light} />
      {isNew && !isFirst ? <span className="unseen">, unlike the row above</span> : null}
    </span>
  );
}

/** Why it stands where it stands, how surely, and what is to be bought. */
const Said = ({ why, close, toBuy }: RowProps) => (
  <div className="ranking-told">
    <p>
      {close === undefined ? null : <strong>{close} </strong>}
      {why}
    </p>
    <p>{toBuy}</p>
  </div>
);

/** The way to the stage; once it is there, to its car. */
function PutOn({ number, choices, letter, standsAs, canStand }: RowProps) {
  const isThere = standsAs !== undefined;
  return (
    <button
      type="button"
      className="button ranking-put"
      disabled={!isThere && !canStand}
      onClick={() => (isThere ? goToCar(standsAs) : putOnStage(choices, number))}
    >
      {isThere ? `Stands as ${letter}` : 'Put on the stage'}
      <span className="unseen">: number {number}</span>
    </button>
  );
}
