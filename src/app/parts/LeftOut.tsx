/**
 * What the table leaves out, at its foot: parts that are not on this model, with the way back, and
 * parts of the car that the build does not describe yet.
 */
import { useState } from 'react';
import { uncoveredParts } from '../../build/coverage.ts';
import { addPart } from '../../build/edit/cover.ts';
import { setAbsent } from '../../build/edit/part.ts';
import { lay } from '../overlay/overlay.ts';
import { edit, endStep, useBench, useWork } from '../store.ts';
import { carPartNames, commonest } from './bring.ts';

/** Rows of parts that no alternative shows. */
export function LeftOut({ columns }: { readonly columns: number }) {
  const { build, car } = useWork();
  const absent = build.parts.filter((part) => part.absent);
  const nameOf = carPartNames(car.sight.parts);
  const unknown = uncoveredParts(build, car.sight);
  const describe = (id: string): void => {
    endStep();
    edit((now) => addPart(now, nameOf(id), [id], commonest(now)));
    const added = useBench.getState().work?.build.parts.at(-1);
    if (added !== undefined) lay({ kind: 'part', part: added.id });
  };
  return (
    <>
      <Fold
        columns={columns}
        title={absent.length === 1 ? 'part not on this model' : 'parts not on this model'}
        rows={absent.map(({ id, name }) => ({
          id,
          name,
          words: 'It is on this model after all',
          act: () => {
            endStep();
            edit((now) => setAbsent(now, id, false));
          },
        }))}
      />
      <Fold
        columns={columns}
        title={`${unknown.length === 1 ? 'part' : 'parts'} of the car not described yet`}
        rows={unknown.map((id) => ({
          id,
          name: nameOf(id),
          words: 'Add it to the table',
          act: () => describe(id),
        }))}
      />
    </>
  );
}

interface FoldProps {
  readonly columns: number;
  readonly title: string;
  readonly rows: readonly {
    readonly id: string;
    readonly name: string;
    readonly words: string;
    readonly act: () => void;
  }[];
}

function Fold({ columns, title, rows }: FoldProps) {
  const [isUnfolded, setUnfolded] = useState(false);
  if (rows.length === 0) return null;
  return (
    <tbody className="rows-alike rows-left-out">
      <tr>
        <th scope="rowgroup" colSpan={columns} className="fold">
          <button type="button" aria-expanded={isUnfolded} onClick={() => setUnfolded(!isUnfolded)}>
            <span className="fold-mark" aria-hidden="true" />
            {rows.length} {title}
            <span className="quiet fold-names">{rows.map(({ name }) => name).join(', ')}</span>
          </button>
        </th>
      </tr>
      {isUnfolded
        ? rows.map(({ id, name, words, act }) => (
            <tr key={id}>
              <th scope="row">{name}</th>
              <td colSpan={Math.max(1, columns - 1)}>
                <button type="button" className="text-button" onClick={act}>
                  {words}
                  <span className="unseen">: {name}</span>
                </button>
              </td>
            </tr>
          ))
        : null}
    </tbody>
  );
}
