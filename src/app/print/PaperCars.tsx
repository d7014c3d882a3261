/** The cars side by side as drawings, from two sides, each with its number and its finishes. */
import { useLayoutEffect, useMemo, useRef } from 'react';
import type { Alternative } from '../../build/build.ts';
import { absentCarParts } from '../../build/fitted.ts';
import { wearOf } from '../cars/card/worn.ts';
import { paintOf } from '../cars/paint.ts';
import { drawingOf, leaveOutIn } from '../cars/trace.ts';
import { useViewing } from '../live/viewing.ts';
import { isBegun } from '../model/steps.ts';
import { useStaged } from '../onStage.ts';
import type { View } from '../opening/garage.ts';
import { useSheet } from '../sheet/compared.ts';
import { useWork } from '../store.ts';
import { Mark } from './Mark.tsx';

/** A column for each alternative. */
export function PaperCars() {
  const { car } = useWork();
  const staged = useStaged();
  const place = useViewing((viewing) => viewing.place);
  const first = car.views.find(({ id }) => id === place) ?? car.views[0];
  // What the first drawing hides is shown from the other end of the car.
  const other = first?.id === 'rear' ? 'front' : 'rear';
  const second = car.views.find(({ id }) => id === other && id !== first?.id);
  const views = [first, second].filter((view) => view !== undefined);
  return (
    <section className="paper-cars">
      {staged.map(({ alternative, letter }) => (
        <PaperCar key={alternative.id} alternative={alternative} letter={letter} views={views} />
      ))}
    </section>
  );
}

interface PaperCarProps {
  readonly alternative: Alternative;
  readonly letter: string;
  readonly views: readonly View[];
}

function PaperCar({ alternative, letter, views }: PaperCarProps) {
  const { build, car } = useWork();
  const sheet = useSheet(alternative.id);
  const worn = useMemo(() => wearOf(build, alternative, car.sight), [build, alternative, car]);
  return (
    <div className="paper-car">
      <h2>
        <span className="paper-letter">{letter}</span> <bdi>{alternative.name}</bdi>
        {sheet === undefined || !isBegun(build) ? null : (
          <span className="paper-overall">{Math.round(sheet.overall)}</span>
        )}
      </h2>
      {views.map((view) => (
        <Drawing key={view.id} alternative={alternative} view={view} />
      ))}
      <p className="paper-worn">
        {worn.map(({ finish }) => (
          <Mark key={`${finish.rack}/${finish.id}`} finish={finish} light={build.viewing.light} />
        ))}
      </p>
      {alternative.note === undefined ? null : <p dir="auto">{alternative.note}</p>}
    </div>
  );
}

/** The car drawn in lines and areas, sharp on any printer. */
function Drawing({ alternative, view }: { alternative: Alternative; view: View }) {
  const { build, car } = useWork();
  const host = useRef<HTMLDivElement>(null);
  useLayoutEffect(() => {
    const drawing = drawingOf(view);
    for (const [name, value] of paintOf(build, alternative, car.sight)) {
      drawing.style.setProperty(name, value);
    }
    leaveOutIn(drawing, absentCarParts(build, car.sight.parts));
    host.current?.replaceChildren(drawing);
  }, [build, car, alternative, view]);
  return <div ref={host} className="paper-drawing" />;
}
