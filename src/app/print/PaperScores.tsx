/** Every score of every alternative with all its sentences, one score a row. */
import type { ScoreSheet } from '../../score/comparison.ts';
import { type ScoreKey, scoreKeys } from '../../score/evidence.ts';
import { scoreNames } from '../../score/name.ts';
import { sentenceOf } from '../../score/sentence.ts';
import { useStaged } from '../onStage.ts';
import { useComparison } from '../sheet/compared.ts';
import { useDrawn } from '../sheet/drawn.ts';
import { explanations } from '../sheet/explained/words.ts';
import { beatenInWords } from '../sheet/scores.ts';

/** The score sheets side by side. */
export function PaperScores() {
  const staged = useStaged();
  const { alternatives } = useComparison();
  const drawn = useDrawn()?.alternatives;
  const sheets = staged.flatMap(
    ({ alternative }) => alternatives.find(({ id }) => id === alternative.id) ?? [],
  );
  const breaks = sheets.some(({ broken }) => broken.length > 0);
  return (
    <section>
      <h2>Score sheets</h2>
      <table className="paper-scores">
        <thead>
          <tr>
            <th scope="col">Score, 0 to 100</th>
            {sheets.map(({ id, letter, name }) => (
              <th key={id} scope="col">
                <span className="paper-letter">{letter}</span> <bdi>{name}</bdi>
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          <tr>
            <th scope="row">
              Overall <small>All six by their weights</small>
            </th>
            {sheets.map((sheet) => (
              <td key={sheet.id}>
                <strong>{Math.round(sheet.overall)}</strong>
                <ul>
                  {standingOf(
                    sheet,
                    alternatives,
                    drawn?.find(({ id }) => id === sheet.id),
                  ).map((words) => (
                    <li key={words}>{words}</li>
                  ))}
                </ul>
              </td>
            ))}
          </tr>
          {breaks ? (
            <tr>
              <th scope="row">Rules broken</th>
              {sheets.map(({ id, broken }) => (
                <td key={id}>{broken.length === 0 ? 'None' : <Sentences sentences={broken} />}</td>
              ))}
            </tr>
          ) : null}
          {scoreKeys.map((key) => (
            <tr key={key}>
              <th scope="row">
                {scoreNames[key]} <small>{asked(key)}</small>
              </th>
              {sheets.map((sheet) => (
                <td key={sheet.id}>
                  <strong>{Math.round(sheet.scores[key])}</strong>
                  <Sentences
                    sentences={sheet.evidence.filter(({ score }) => score === key).map(sentenceOf)}
                  />
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

/** The question alone; how far to trust it stands on the screen. */
const asked = (key: ScoreKey): string => `${explanations[key].asks.split('?')[0]}?`;

function standingOf(
  sheet: ScoreSheet,
  all: readonly ScoreSheet[],
  drawn: ScoreSheet | undefined,
): string[] {
  const ahead = drawn?.aheadOfOrdinary;
  const beaten = beatenInWords(sheet, all);
  return [
    `${Math.round(sheet.overallWithoutReadiness)} without readiness`,
    ...(ahead === undefined ? [] : [`ahead of ${Math.round(ahead)} of 100 ordinary schemes`]),
    ...(beaten === undefined ? [] : [beaten]),
  ];
}

const Sentences = ({ sentences }: { sentences: readonly string[] }) =>
  sentences.length === 0 ? (
    <p>Nothing to remark.</p>
  ) : (
    <ul>
      {sentences.map((sentence) => (
        <li key={sentence}>{sentence}</li>
      ))}
    </ul>
  );
