/** One alternative on the stage: its letter and name, its picture, its number and worst finding. */
import { memo } from 'react';
import type { Weights } from '../../build/build.ts';
import type { ScoreSheet } from '../../score/comparison.ts';
import { headlineOf } from '../../score/headline.ts';
import { AlternativeName } from '../alternatives/AlternativeName.tsx';
import { isBegun } from '../model/steps.ts';
import type { Staged } from '../onStage.ts';
import type { View } from '../opening/garage.ts';
import { lay } from '../overlay/overlay.ts';
import { Bar } from '../pieces/Bar.tsx';
import { pointsAt } from '../pointing.ts';
import { useBefore, wasInWords } from '../sheet/before.ts';
import { useSheet } from '../sheet/compared.ts';
import { Finding } from '../sheet/Finding.tsx';
import { Mending } from '../sheet/mend/Mending.tsx';
import { useBench } from '../store.ts';
import { Blink } from './card/Blink.tsx';
import { Stand } from './card/Stand.tsx';
import { Told } from './card/Told.tsx';
import { Worn } from './card/Worn.tsx';
import { carElementId } from './element.ts';
import { Picture } from './Picture.tsx';

interface CarCardProps {
  readonly staged: Staged;
  readonly view: View;
}

const isSameCard = (one: CarCardProps, other: CarCardProps): boolean =>
  one.view === other.view &&
  one.staged.alternative === other.staged.alternative &&
  one.staged.letter === other.staged.letter &&
  one.staged.at === other.staged.at;

/** An alternative as a picture with its verdict. */
export const CarCard = memo(function CarCard({ staged, view }: CarCardProps) {
  const { alternative, letter } = staged;
  const sheet = useSheet(alternative.id);
  const isJudged = useBench(({ work }) => work !== undefined && isBegun(work.build));
  const weights = useBench(({ work }) => work?.build.weights);
  const judged = isJudged ? sheet : undefined;
  return (
    <article className="car" id={carElementId(alternative.id)} aria-label={`Alternative ${letter}`}>
      <header className="car-head">
        <h2>
          <AlternativeName staged={staged} />
        </h2>
        {judged === undefined ? (
          <p className="overall quiet">No number yet</p>
        ) : (
          <Overall sheet={judged} />
        )}
        <Worn alternative={alternative} letter={letter} />
      </header>
      <div className="picture-frame">
        <Picture alternative={alternative} letter={letter} view={view} />
        <Stand alternative={alternative.id} letter={letter} />
        <Told alternative={alternative} letter={letter} />
        <div className="car-tools">
          <Blink alternative={alternative.id} letter={letter} />
        </div>
      </div>
      <div
        className="car-verdict"
        tabIndex={-1}
        data-mends=""
        data-breaks={sheet?.broken.length ? '' : undefined}
      >
        {sheet?.broken.map((sentence) => (
          <p key={sentence} className="breaks">
            <strong>Breaks a rule.</strong> {sentence}
          </p>
        ))}
        {judged === undefined || weights === undefined ? (
          <First />
        ) : (
          <Verdict sheet={judged} weights={weights} />
        )}
      </div>
    </article>
  );
}, isSameCard);

/** What to do before a number says anything. */
const First = () => (
  <p>
    First{' '}
    <button
      type="button"
      className="text-button"
      onClick={() => lay({ kind: 'parts', asks: 'painted' })}
    >
      mark what is painted
    </button>
    , or{' '}
    <button
      type="button"
      className="text-button"
      onClick={() => lay({ kind: 'parts', asks: 'open' })}
    >
      open a part
    </button>{' '}
    and give it two candidates: only then does a number mean anything.
  </p>
);

/** What is to be said first: the worst finding with what would mend it, or that all is well. */
function Verdict({ sheet, weights }: { sheet: ScoreSheet; weights: Weights }) {
  const headline = headlineOf(sheet, weights);
  if ('praise' in headline) return <p {...pointsAt(headline.parts)}>{headline.praise}</p>;
  return (
    <>
      <Finding evidence={headline.finding} />
      <Mending sheet={sheet} at={sheet.evidence.indexOf(headline.finding)} isBrief />
    </>
  );
}

/** The overall number and where it stood before the last change of finish, if that moved it. */
function Overall({ sheet }: { sheet: ScoreSheet }) {
  const was = wasInWords(useBefore(sheet.id)?.overall, sheet.overall);
  return (
    <p className="overall">
      {was === undefined ? null : <span className="overall-before">{was}</span>}
      <span className="overall-value">
        <span className="unseen">Overall </span>
        {Math.round(sheet.overall)}
        <span className="unseen"> of 100</span>
      </span>
      <Bar value={sheet.overall} />
    </p>
  );
}
