/**
 * The comparison on paper: what is compared and how it is seen, the cars, every part with its finish
 * on every alternative, the rules, and why each alternative stands where it stands. Nothing to press
 * and nothing folded.
 */

import { fittedBuild } from '../../build/fitted.ts';
import { namesIn, ruleSentence } from '../../build/rule.ts';
import { closenessSentence } from '../../score/sentence.ts';
import { lightWords } from '../cars/lamps.ts';
import { useStaged } from '../onStage.ts';
import { useComparison } from '../sheet/compared.ts';
import { useDrawn } from '../sheet/drawn.ts';
import { lettersOf } from '../sheet/scores.ts';
import { useWork } from '../store.ts';
import { PaperCars } from './PaperCars.tsx';
import { PaperParts } from './PaperParts.tsx';
import { PaperScores } from './PaperScores.tsx';

/** Everything, as it is now; `today` is told as the day it was printed. */
export function Paper({ today }: { today: Date }) {
  const { build, car } = useWork();
  const staged = useStaged();
  const { light, distanceMm } = build.viewing;
  return (
    <article
      ref={(paper) => paper?.style.setProperty('--count', String(Math.max(1, staged.length)))}
    >
      <header>
        <h1>
          <bdi>{build.name}</bdi>
        </h1>
        <p>
          {car.sight.name}, 1:{build.scale}. Seen by {lightWords(light)} from {distanceMm / 1000} m.
          {build.wantedBy === undefined ? null : <> Wanted by {dayOf(new Date(build.wantedBy))}.</>}{' '}
          Printed on {dayOf(today)}.
        </p>
        {build.story === undefined ? null : (
          <p className="paper-story" dir="auto">
            {build.story}
          </p>
        )}
      </header>
      {staged.length === 0 ? <p>This build has no alternatives yet.</p> : <PaperCars />}
      <Closeness />
      <PaperParts />
      <PaperRules />
      {staged.length === 0 ? null : <PaperScores />}
      <footer>
        Numbers follow from stated colours and our judgement of what matters; your eye decides.
        Printed colours depend on printer and paper: hold sprayed spoons against the model, not this
        sheet.
      </footer>
    </article>
  );
}

/** As `24 May 2031`. */
const dayOf = (day: Date): string =>
  new Intl.DateTimeFormat('en-GB', { dateStyle: 'long' }).format(day);

/** How surely one is ahead of another, of every two. */
function Closeness() {
  const comparison = useComparison();
  const drawn = useDrawn();
  const isStaged = new Set(useStaged().map(({ alternative }) => alternative.id));
  const pairs = drawn?.closeness.filter(({ a, b }) => isStaged.has(a) && isStaged.has(b)) ?? [];
  if (pairs.length === 0) return null;
  return (
    <ul className="paper-closeness">
      {pairs.map((pair) => (
        <li key={`${pair.a} ${pair.b}`}>{closenessSentence(pair, lettersOf(comparison))}</li>
      ))}
    </ul>
  );
}

function PaperRules() {
  const { build } = useWork();
  const { rules } = fittedBuild(build);
  if (rules.length === 0) return null;
  const names = namesIn(build);
  return (
    <section>
      <h2>Rules</h2>
      <ul className="paper-rules">
        {rules.map((rule) => (
          <li key={JSON.stringify(rule)} dir="auto">
            {ruleSentence(rule, names)}
          </li>
        ))}
      </ul>
    </section>
  );
}
