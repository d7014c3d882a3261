/**
 * Parts down, alternatives across, a spoon in each cell. Rows that differ come first; rows alike
 * are folded away and unfold in place.
 */
import { type ReactNode, useEffect, useMemo, useRef, useState } from 'react';
import { finishesByRef } from '../../build/build.ts';
import { uncoveredParts } from '../../build/coverage.ts';
import { useInSight } from '../afterwards.ts';
import { AddAlternative } from '../alternatives/AddAlternative.tsx';
import { AlternativeName } from '../alternatives/AlternativeName.tsx';
import { later } from '../later.tsx';
import { useStaged, useStagedBuild } from '../onStage.ts';
import { lay } from '../overlay/overlay.ts';
import { scrollable } from '../pieces/scrollable.ts';
import { useWork } from '../store.ts';
import { Carried } from './Carried.tsx';
import { PartRow } from './PartRow.tsx';
import { type Row, rowsOf } from './rows.ts';

const Beginning = later(
  'The questions',
  async () => (await import('../model/Beginning.tsx')).Beginning,
);
const LeftOut = later(
  'What is left out',
  async () => (await import('../parts/LeftOut.tsx')).LeftOut,
);

/** The part table of the open build. */
export function PartTable() {
  const place = useRef<HTMLElement>(null);
  const { work, staged, compared } = useInSight(place, useTold());
  const { key, build, car } = work;
  // What differs is asked anew once others are compared.
  const kept = useKept([key, ...staged.map(({ alternative }) => alternative.id).sort()].join());
  const { differing, alikeOpen, alikeSettled } = rowsOf(compared, kept);
  useEffect(() => {
    for (const { part } of differing) kept.add(part.id);
  }, [differing, kept]);
  const columns = staged.length + 1;
  const finishes = finishesByRef(build);
  const rowOf = ({ part, refs }: Row): ReactNode => (
    <PartRow
      key={part.id}
      part={part}
      cells={staged.map(({ alternative, letter }, column) => ({
        alternative: alternative.id,
        letter,
        finish: finishes.get(refs[column] ?? ''),
      }))}
      light={build.viewing.light}
    />
  );
  const isWhole =
    build.parts.every(({ absent }) => !absent) && uncoveredParts(build, car.sight).length === 0;
  return (
    <section className="part-table" aria-labelledby="parts-title" ref={place}>
      <Beginning />

      <div className="section-head">
        <h2 id="parts-title" className="section-title">
          Parts
          <small>
            Press a spoon to try another, or <span className="for-mouse">drag it onto a car</span>
            <span className="for-finger">rest a finger on it and carry it to a car</span>; press a
            part to ask where its colour appears, the words beneath it to change how it stands.
          </small>
        </h2>
        <div className="buttons">
          <button type="button" className="button" onClick={() => lay({ kind: 'parts' })}>
            Mark several parts…
          </button>
          <AddAlternative />
        </div>
      </div>
      <div className="table-strip" {...scrollable('Part table')}>
        <table>
          <thead>
            <tr>
              <th scope="col">Part</th>
              {staged.map((one) => (
                <th key={one.alternative.id} scope="col">
                  <AlternativeName staged={one} />
                </th>
              ))}
            </tr>
          </thead>
          <tbody className="rows-differing">{differing.map(rowOf)}</tbody>
          <Folded title="open, alike so far" rows={alikeOpen} columns={columns} rowOf={rowOf} />
          <Folded title="settled" rows={alikeSettled} columns={columns} rowOf={rowOf} />
          {isWhole ? null : <LeftOut columns={columns} />}
        </table>
      </div>
      <Carried />
    </section>
  );
}

/** What the table tells of. */
function useTold() {
  const work = useWork();
  const staged = useStaged();
  const compared = useStagedBuild();
  return useMemo(() => ({ work, staged, compared }), [work, staged, compared]);
}

/** Parts that have differed since these alternatives were first compared. */
function useKept(key: string): Set<string> {
  const kept = useRef({ key, parts: new Set<string>() });
  if (kept.current.key !== key) kept.current = { key, parts: new Set() };
  return kept.current.parts;
}

interface FoldedProps {
  readonly title: string;
  readonly rows: readonly Row[];
  readonly columns: number;
  readonly rowOf: (row: Row) => ReactNode;
}

/** Rows that are alike on every alternative, folded until asked for. */
function Folded({ title, rows, columns, rowOf }: FoldedProps) {
  const [isUnfolded, setUnfolded] = useState(false);
  if (rows.length === 0) return null;
  return (
    <tbody className="rows-alike">
      <tr>
        <th scope="rowgroup" colSpan={columns} className="fold">
          <button type="button" aria-expanded={isUnfolded} onClick={() => setUnfolded(!isUnfolded)}>
            <span className="fold-mark" aria-hidden="true" />
            {rows.length} {rows.length === 1 ? 'part' : 'parts'} {title}
            <span className="quiet fold-names">{rows.map(({ part }) => part.name).join(', ')}</span>
          </button>
        </th>
      </tr>
      {isUnfolded ? rows.map(rowOf) : null}
    </tbody>
  );
}
