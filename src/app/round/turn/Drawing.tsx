/** The drawing that stands in for one car until it can be turned. */
import { useEffect, useMemo, useRef } from 'react';
import type { Alternative, Build } from '../../../build/build.ts';
import { drawingOf } from '../../cars/trace.ts';
import type { Car } from '../../opening/garage.ts';
import { frameCar, paintCar } from '../drawn/car.ts';

interface DrawingProps {
  readonly build: Build;
  readonly alternative: Alternative;
  readonly car: Car;
}

/** The one view there is of a car, painted as an alternative. */
export function Drawing({ build, alternative, car }: DrawingProps) {
  const host = useRef<HTMLDivElement>(null);
  const view = car.views[0];
  const drawing = useMemo(() => (view === undefined ? undefined : drawingOf(view)), [view]);
  useEffect(() => {
    if (drawing === undefined || view === undefined) return;
    host.current?.replaceChildren(drawing);
    frameCar(drawing, view);
    paintCar(drawing, build, alternative, car);
  }, [drawing, view, build, alternative, car]);
  return (
    <div
      ref={host}
      className="round-picture"
      role="img"
      aria-label={`Drawing of car ${alternative.name}`}
    />
  );
}
