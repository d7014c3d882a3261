/**
 * Parts down, alternatives across, a spoon in each cell. Rows that differ come first; rows alike
 * are folded away and unfold in place.
 */
import { useEffect, useRef, useState } from 'react';
import { letterOf } from '../../build/build.ts';
import { Letter } from '../pieces/Letter.tsx';
import { scrollable } from '../pieces/scrollable.ts';
import { useWork } from '../store.ts';
import { Carried } from './Carried.tsx';
import { PartRow } from './PartRow.tsx';
import { type Row, rowsOf } from './rows.ts';

/** The part table of the open build. */
export function PartTable() {
  const { build } = useWork();
  const kept = useKept(build.id);
  const { differing, alikeOpen, alikeSettled } = rowsOf(build, kept);
  useEffect(() => {
    for (const { part } of differing) kept.add(part.id);
  }, [differing, kept]);
  const columns = build.alternatives.length + 1;
  return (
    <section className="part-table" aria-labelledby="parts-title">
      <h2 id="parts-title" className="section-title">
        Parts
        <small>
          Press a spoon to try another, or <span className="for-mouse">drag it onto a car</span>
          <span className="for-finger">rest a finger on it and carry it to a car</span>; press a
          part to ask where its colour appears.
        </small>
      </h2>
      <div className="table-strip" {...scrollable('Part table')}>
        <table>
          <thead>
            <tr>
              <th scope="col">Part</th>
              {build.alternatives.map(({ id, name }, at) => (
                <th key={id} scope="col">
                  <Letter letter={letterOf(at)} /> <span className="quiet">{name}</span>
                </th>
              ))}
            </tr>
          </thead>
          <tbody className="rows-differing">
            {differing.map((row) => (
              <PartRow key={row.part.id} row={row} />
            ))}
          </tbody>
          <Folded title="open, alike so far" rows={alikeOpen} columns={columns} />
          <Folded title="settled" rows={alikeSettled} columns={columns} />
        </table>
      </div>
      <Carried />
    </section>
  );
}

/** Parts that have differed since this build was opened. */
function useKept(buildId: string): Set<string> {
  const kept = useRef({ buildId, parts: new Set<string>() });
  if (kept.current.buildId !== buildId) kept.current = { buildId, parts: new Set() };
  return kept.current.parts;
}

interface FoldedProps {
  readonly title: string;
  readonly rows: readonly Row[];
  readonly columns: number;
}

/** Rows that are alike on every alternative, folded until asked for. */
function Folded({ title, rows, columns }: FoldedProps) {
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
      {isUnfolded ? rows.map((row) => <PartRow key={row.part.id} row={row} />) : null}
    </tbody>
  );
}
