/** The stage: every alternative side by side in one view, under one lamp. */
import { useRef, useSyncExternalStore } from 'react';
import { useArea } from '../area.ts';
import { later } from '../later.tsx';
import { Live } from '../live/Live.tsx';
import { lookFrom, useViewing } from '../live/viewing.ts';
import { useStaged } from '../onStage.ts';
import { scrollable } from '../pieces/scrollable.ts';
import { useWork } from '../store.ts';
import { CarCard } from './CarCard.tsx';
import { Conditions } from './Conditions.tsx';
import { Brief } from './compact/Brief.tsx';
import { useCompact } from './compact/compact.ts';
import { useHeld } from './compact/held.ts';
import { Foot } from './Foot.tsx';

const NoAlternatives = later(
  'The invitation',
  async () => (await import('../alternatives/NoAlternatives.tsx')).NoAlternatives,
);
const ToQuestions = later(
  'The way to the questions',
  async () => (await import('../model/ToQuestions.tsx')).ToQuestions,
);

/** Where the switches stand beside the cars, and come first; elsewhere beneath them. */
const beside = matchMedia('(min-width: 60.01em)');
const onBeside = (tell: () => void): (() => void) => {
  beside.addEventListener('change', tell);
  return () => beside.removeEventListener('change', tell);
};

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
    useArea(({ area }) => area !== 'bench'),
  );
  const view = car.views.find(({ id }) => id === place) ?? car.views[0];
  const isBeside = useSyncExternalStore(onBeside, () => beside.matches);
  useHeld(stage);
  if (view === undefined) return <p className="waiting">The pictures of this car are missing.</p>;
  const switches = (
    <Conditions
      places={liveness === 'live' ? places : car.views}
      place={liveness === 'live' ? place : view.id}
      onPlace={lookFrom}
    />
  );
  return (
    <div
      ref={stage}
      className="stage"
      data-liveness={liveness}
      data-alone={staged.length === 1 ? '' : undefined}
    >
      {isBeside ? switches : null}
      <div className="cars" ref={cars} {...scrollable('The alternatives side by side')}>
        {staged.length === 0 ? <NoAlternatives /> : null}
        {staged.map((one) => (
          <CarCard key={one.alternative.id} staged={one} view={view} />
        ))}
        {staged.length === 0 ? null : <Live within={cars} />}
      </div>
      {staged.length === 0 ? null : <Foot strip={cars} />}
      {isBeside ? null : <ToQuestions />}
      {isBeside ? null : switches}
      <Brief
        place={(liveness === 'live' ? places : car.views).find(({ id }) => id === place)?.name}
      />
    </div>
  );
}
