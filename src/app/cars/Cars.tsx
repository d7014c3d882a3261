/** The stage: every alternative side by side in one view, under one lamp. */
import { lazy, Suspense, useRef } from 'react';
import { useArea } from '../area.ts';
import { Live } from '../live/Live.tsx';
import { lookFrom, useViewing } from '../live/viewing.ts';
import { useStaged } from '../onStage.ts';
import { scrollable } from '../pieces/scrollable.ts';
import { useWork } from '../store.ts';
import { CarCard } from './CarCard.tsx';
import { Conditions } from './Conditions.tsx';
import { Brief } from './compact/Brief.tsx';
import { useCompact } from './compact/compact.ts';
import { Foot } from './Foot.tsx';

const NoAlternatives = lazy(async () => ({
  default: (await import('../alternatives/NoAlternatives.tsx')).NoAlternatives,
}));

/** Switches and cars. */
export function Cars() {
  const { car } = useWork();
  const staged = useStaged();
  const place = useViewing((viewing) => viewing.place);
  const places = useViewing((viewing) => viewing.places);
  const liveness = useViewing((viewing) => viewing.liveness);
  const cars = useRef<HTMLDivElement>(null);
  const stage = useRef<HTMLDivElement>(null);
  useCompact(
    stage,
    useArea(({ area }) => area === 'rack'),
  );
  const view = car.views.find(({ id }) => id === place) ?? car.views[0];
  if (view === undefined) return <p className="waiting">The pictures of this car are missing.</p>;
  return (
    <div ref={stage} className="stage" data-liveness={liveness}>
      <div className="cars" ref={cars} {...scrollable('The alternatives side by side')}>
        {staged.length === 0 ? (
          <Suspense fallback={null}>
            <NoAlternatives />
          </Suspense>
        ) : null}
        {staged.map((one) => (
          <CarCard key={one.alternative.id} staged={one} view={view} />
        ))}
        {staged.length === 0 ? null : <Live within={cars} />}
      </div>
      {staged.length === 0 ? null : <Foot strip={cars} />}
      <Conditions
        places={liveness === 'live' ? places : car.views}
        place={liveness === 'live' ? place : view.id}
        onPlace={lookFrom}
      />
      <Brief
        place={(liveness === 'live' ? places : car.views).find(({ id }) => id === place)?.name}
      />
    </div>
  );
}
