/** What one file or paste holds: spoons of what is good, what was taken for granted, bad rows. */
import type { LightId } from '../../../colour/illuminant.ts';
import { cutText } from '../../../ground/id.ts';
import { type Problem, problemSentence } from '../../../ground/problem.ts';
import { Spoon } from '../../pieces/Spoon.tsx';
import { scrollable } from '../../pieces/scrollable.ts';
import { finishesOf } from '../finishes.ts';
import { countOf } from '../told.ts';
import { dropReading } from './bring.ts';
import type { Reading } from './reading.ts';

const mostSpoons = 18;
const mostFaults = 200;

/** A section that can be let go. */
export function Read({ reading, light }: { readonly reading: Reading; readonly light: LightId }) {
  const { source, rack, problems, granted } = reading;
  const finishes = rack === undefined ? [] : finishesOf(rack);
  const rows = new Set(problems.map(({ place }) => place.split(' › ')[0])).size;
  return (
    <section className="files-read" aria-label={cutText(source)}>
      <header>
        <h3>{cutText(source)}</h3>
        <button type="button" className="text-button" onClick={() => dropReading(source)}>
          Leave it out
        </button>
      </header>
      <p role="status">
        {rack === undefined
          ? 'Nothing can be read from it.'
          : `${countOf(finishes.length)} can come in.`}
        {rack === undefined || problems.length === 0
          ? ''
          : ` ${rows === 1 ? '1 row stays' : `${rows.toLocaleString('en-GB')} rows stay`} out.`}
      </p>
      {finishes.length === 0 ? null : (
        <div className="files-spoons" {...scrollable(`Finishes of ${cutText(source)}`)}>
          <ul>
            {finishes.slice(0, mostSpoons).map((finish) => (
              <li key={finish.id}>
                <Spoon finish={finish} light={light} />
              </li>
            ))}
            {finishes.length > mostSpoons ? (
              <li className="quiet">and {countOf(finishes.length - mostSpoons)} more</li>
            ) : null}
          </ul>
        </div>
      )}
      {problems.length === 0 ? null : (
        <Faults problems={problems} isWhole={rack === undefined} source={source} />
      )}
      {granted.length === 0 ? null : (
        <>
          <h4>Taken for granted</h4>
          <ul className="files-granted">
            {granted.map((sentence) => (
              <li key={sentence}>{sentence}</li>
            ))}
          </ul>
        </>
      )}
    </section>
  );
}

/** What is wrong, row by row. */
function Faults(props: { problems: readonly Problem[]; isWhole: boolean; source: string }) {
  const { problems, isWhole, source } = props;
  const told = problems.slice(0, mostFaults);
  return (
    <>
      <h4>{isWhole ? 'What is wrong' : 'Rows that stay out'}</h4>
      <div className="files-faults" {...scrollable(`What is wrong in ${cutText(source)}`)}>
        <table>
          <thead>
            <tr>
              <th scope="col">Where</th>
              <th scope="col">Found</th>
              <th scope="col">Expected</th>
              <th scope="col">To mend it</th>
            </tr>
          </thead>
          <tbody>
            {told.map((problem) => (
              <tr key={problemSentence(problem)}>
                <th scope="row">{problem.place === '' ? 'The whole' : problem.place}</th>
                <td>{problem.found}</td>
                <td>{problem.expected}</td>
                <td>{problem.mend}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      {problems.length > told.length ? (
        <p className="quiet">
          The first {mostFaults} of {problems.length.toLocaleString('en-GB')}.
        </p>
      ) : null}
    </>
  );
}
