/** The stage: every alternative side by side in one view, under one lamp. */
import { useState } from 'react';
import { letterOf } from '../../build/build.ts';
import { scrollable } from '../pieces/scrollable.ts';
import { useWork } from '../store.ts';
import { CarCard } from './CarCard.tsx';
import { Conditions } from './Conditions.tsx';

/** Switches and cars. */
export function Cars() {
  const { build, car } = useWork();
  const [viewId, setViewId] = useState<string>();
  const view = car.views.find(({ id }) => id === viewId) ?? car.views[0];
  if (view === undefined) return <p className="waiting">The pictures of this car are missing.</p>;
  return (
    <div className="stage">
      <div className="cars" {...scrollable('The alternatives side by side')}>
        {build.alternatives.length > 0 ? null : (
          <p className="waiting">
            This build holds no alternatives to compare yet; its file can name them.
          </p>
        )}
        {build.alternatives.map((alternative, at) => (
          <CarCard
            key={alternative.id}
            alternative={alternative}
            letter={letterOf(at)}
            view={view}
          />
        ))}
      </div>
      <Conditions views={car.views} view={view} onView={setViewId} />
    </div>
  );
}
