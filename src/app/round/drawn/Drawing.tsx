/** @jsxImportSource preact */
/** The car of one alternative: the one view there is, painted for it. Words stand in until it comes. */
import { useEffect, useMemo, useRef } from 'preact/hooks';
import type { Alternative, Build } from '../../../build/build.ts';
import { drawingOf } from '../../cars/trace.ts';
import type { Car, View } from '../../opening/garage.ts';
import type { Scene } from '../scene.ts';
import { frameCar, paintCar } from './car.ts';

interface DrawingProps {
  readonly build: Build;
  readonly alternative: Alternative;
  readonly scene: Scene;
}

/** The picture, or what there is to say until it is here. */
export function Drawing({ build, alternative, scene }: DrawingProps) {
  const { car, state } = scene;
  const view = car?.views[0];
  if (car === undefined || view === undefined) {
    return (
      <p class="round-no-picture">
        {state === 'coming'
          ? 'The picture is on its way.'
          : 'No picture: the words tell the cars apart.'}
      </p>
    );
  }
  return <Painted build={build} alternative={alternative} car={car} view={view} />;
}

interface PaintedProps extends Omit<DrawingProps, 'scene'> {
  readonly car: Car;
  readonly view: View;
}

function Painted({ build, alternative, car, view }: PaintedProps) {
  const host = useRef<HTMLDivElement>(null);
  const drawing = useMemo(() => drawingOf(view), [view]);
  useEffect(() => {
    host.current?.replaceChildren(drawing);
    frameCar(drawing, view);
  }, [drawing, view]);
  useEffect(() => {
    paintCar(drawing, build, alternative, car);
  }, [drawing, build, alternative, car]);
  return (
    <div
      ref={host}
      class="round-picture"
      role="img"
      aria-label={`Drawing of car ${alternative.name}, ${view.name.toLowerCase()} view`}
    />
  );
}
