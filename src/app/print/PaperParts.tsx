/**
 * Every part and what it wears on every alternative; parts that differ come first. What is alike is
 * told once for all of them, in a line.
 */
import { finishesByRef } from '../../build/build.ts';
import { useStaged, useStagedBuild } from '../onStage.ts';
import { standingWords } from '../parts/standing.ts';
import { useWork } from '../store.ts';
import { rowsOf } from '../table/rows.ts';
import { Mark } from './Mark.tsx';

const none: ReadonlySet<string> = new Set();

/** The part table, whole. */
export function PaperParts() {
  const { build } = useWork();
  const staged = useStaged();
  const { differing, alikeOpen, alikeSettled } = rowsOf(useStagedBuild(), none);
  const finishes = finishesByRef(build);
  const absent = build.parts.filter((part) => part.absent);
  const groups = [
    { title: 'Parts that differ', rows: differing, told: staged },
    { title: 'Alike, still open', rows: alikeOpen, told: staged.slice(0, 1) },
    { title: 'Alike and settled', rows: alikeSettled, told: staged.slice(0, 1) },
  ].filter(({ rows }) => rows.length > 0);
  return (
    <section>
      <h2>Parts</h2>
      <table className="paper-parts">
        <thead>
          <tr>
            <th scope="col">Part</th>
            {staged.map(({ alternative, letter }) => (
              <th key={alternative.id} scope="col">
                <span className="paper-letter">{letter}</span> <bdi>{alternative.name}</bdi>
              </th>
            ))}
          </tr>
        </thead>
        {groups.map(({ title, rows, told }) => (
          <tbody key={title} className={told === staged ? undefined : 'paper-alike'}>
            <tr className="paper-group">
              <th scope="rowgroup" colSpan={staged.length + 1}>
                {title}
              </th>
            </tr>
            {rows.map(({ part, refs }) => (
              <tr key={part.id}>
                <th scope="row">
                  <bdi>{part.name}</bdi>
                  <small>{standingWords(part)}</small>
                </th>
                {told.map(({ alternative }, at) => {
                  const finish = finishes.get(refs[at] ?? '');
                  return (
                    <td key={alternative.id} colSpan={staged.length / told.length}>
                      {finish === undefined ? (
                        'none'
                      ) : (
                        <Mark finish={finish} light={build.viewing.light} hasKind />
                      )}
                    </td>
                  );
                })}
              </tr>
            ))}
          </tbody>
        ))}
      </table>
      {absent.length === 0 ? null : (
        <p className="paper-absent">
          Not on this model: {absent.map(({ name }) => name).join(', ')}.
        </p>
      )}
    </section>
  );
}
