/**
 * The one canvas over all stands of a page: lies where they lie, is as fine as this machine draws
 * smoothly while things move and as the screen shows at rest, and tells `viewing` whether the cars
 * live. Its `data-picture` says whether the picture is due, moving or still.
 */
import { type ReactNode, useCallback, useEffect, useRef, useState } from 'react';
import { placesOf } from '../../../stage/camera/places.ts';
import type { SceneProps, Studio } from '../../../stage/Scene.tsx';
import { Stage } from '../../../stage/Stage.tsx';
import { adapted, type Fineness, finestFor, staysSmooth } from '../../../stage/view/fineness.ts';
import type { Ground } from '../stands.ts';
import { useViewing } from '../viewing.ts';

interface LiveCanvasProps extends Pick<SceneProps, 'mesh' | 'cars' | 'poseFor'> {
  readonly ground: Ground;
  /** The stands with the cars that are on them now; those of the ground where absent. */
  readonly stands?: Ground['stands'];
  readonly isMoving: boolean;
  /** Called once the cars can be drawn. */
  readonly onStudio?: (studio: Studio) => void;
  /** What lies over the cars, as fine as they are at rest. */
  readonly over?: (fineness: number) => ReactNode;
}

/** The canvas with the cars. */
export function LiveCanvas(props: LiveCanvasProps) {
  const { mesh, cars, poseFor, ground, stands = ground.stands, isMoving, onStudio, over } = props;
  const canvas = useRef<HTMLDivElement>(null);
  const [fineness, setFineness] = useFineness(ground);
  const moves = useRef(isMoving);
  moves.current = isMoving;
  // Smooth edges are the first to go on a slow machine, and stay gone while it moves things.
  const smooths = useRef(true);
  const onDrawn = useCallback(
    (sinceLastMs: number): void => {
      canvas.current?.setAttribute('data-picture', moves.current ? 'moving' : 'still');
      if (!moves.current || sinceLastMs > 5000) return;
      if (smooths.current) smooths.current = staysSmooth(true, sinceLastMs);
      else setFineness((now) => adapted(now, sinceLastMs));
    },
    [setFineness],
  );
  useEffect(() => {
    // Where moving pictures are as fine as still ones, the last of them stays.
    const element = canvas.current;
    if (!isMoving && element?.dataset.picture === 'moving') element.dataset.picture = 'still';
  }, [isMoving]);
  const onDue = useCallback(() => canvas.current?.setAttribute('data-picture', 'due'), []);
  const live = useCallback(
    (studio: Studio): void => {
      onStudio?.(studio);
      useViewing.setState({ liveness: 'live', places: placesOf(mesh) });
    },
    [mesh, onStudio],
  );

  useEffect(() => {
    const style = canvas.current?.style;
    if (style === undefined) return;
    for (const edge of ['left', 'top', 'width', 'height'] as const)
      style[edge] = `${ground[edge]}px`;
  }, [ground]);

  return (
    <div ref={canvas} className="live" aria-hidden="true">
      <Stage
        mesh={mesh}
        cars={cars}
        stands={stands}
        poseFor={poseFor}
        width={ground.width}
        height={ground.height}
        fineness={isMoving ? fineness.moving : fineness.still}
        isSmooth={!isMoving || smooths.current}
        onStudio={live}
        onDue={onDue}
        onDrawn={onDrawn}
        onFailed={() => useViewing.setState({ liveness: 'impossible' })}
        onLost={() => useViewing.setState({ liveness: 'lost' })}
        onFound={() => useViewing.setState({ liveness: 'live' })}
      />
      {over?.(fineness.still)}
    </div>
  );
}

function useFineness({ width, height }: Ground) {
  const [fineness, setFineness] = useState<Fineness>(() =>
    finestFor(width, height, devicePixelRatio),
  );
  useEffect(() => setFineness(finestFor(width, height, devicePixelRatio)), [width, height]);
  return [fineness, setFineness] as const;
}
