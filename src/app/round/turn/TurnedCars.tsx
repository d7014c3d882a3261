/**
 * The live cars of a round in their places: one camera for all, one light for all. Loaded only
 * where this browser draws 3D.
 */
import { type RefObject, useCallback, useMemo, useRef } from 'react';
import type { Mesh } from '../../../car/mesh.ts';
import type { Round } from '../../../opinion/round.ts';
import type { Pose } from '../../../stage/camera/pose.ts';
import { wornBy } from '../../../stage/surface/worn.ts';
import { useCamera } from '../../live/camera.ts';
import { LiveCanvas } from '../../live/canvas/LiveCanvas.tsx';
import { insightOf } from '../../live/insight.ts';
import { type Ground, useGround } from '../../live/stands.ts';
import { frame } from '../../live/viewing.ts';
import { lookOf } from '../../pieces/look.ts';

interface TurnedCarsProps {
  readonly mesh: Mesh;
  /** The element that holds every stand. */
  readonly within: RefObject<HTMLElement | null>;
  readonly round: Round;
  /** Letters of the cars on the stands. */
  readonly letters: readonly string[];
}

/** The cars on their stands, once those are laid out. */
export function TurnedCars(props: TurnedCarsProps) {
  const ground = useGround(props.within, props.letters.join());
  if (ground.width < 1 || ground.height < 1) return null;
  return <OnGround {...props} ground={ground} />;
}

function OnGround(props: TurnedCarsProps & { readonly ground: Ground }) {
  const { mesh, within, ground, letters } = props;
  const { build } = props.round;
  const { width, height } = ground.stands[0]!;
  const standsKey = letters.join();
  const cars = useMemo(
    () =>
      build.alternatives
        .filter(({ name }) => standsKey.split(',').includes(name))
        .map((alternative) => ({
          id: alternative.id,
          worn: wornBy(build, alternative, mesh, (finish) => lookOf(finish, build.viewing.light)),
        })),
    [build, mesh, standsKey],
  );
  const seen = useRef<Pose>(undefined);
  const insight = useMemo(
    () => insightOf({ mesh, build, width, height, pose: () => seen.current }),
    [mesh, build, width, height],
  );
  const { pose, isMoving } = useCamera(mesh, width / height, within, standsKey, {
    onHover: nothing,
    onLeave: nothing,
    onPress: nothing,
    shownAs: (from) => from,
    onFrame(x, y) {
      const hit = insight.hitAt(x, y);
      if (hit !== undefined) frame(insight.coversOf(hit.owner), hit.place);
    },
  });
  seen.current = pose;
  const poseFor = useCallback(() => pose, [pose]);
  return (
    <LiveCanvas mesh={mesh} cars={cars} ground={ground} poseFor={poseFor} isMoving={isMoving} />
  );
}

const nothing = (): void => {};
