/**
 * The cars in three dimensions, laid over the places where their drawings stand. Loaded after the
 * page itself; one camera for all, moved by mouse, finger and keyboard.
 */
import { type RefObject, useCallback, useEffect, useMemo, useRef, useState } from 'react';
import type { Mesh } from '../../car/mesh.ts';
import type { Vector3 } from '../../ground/vector.ts';
import { placesOf, poseAt } from '../../stage/camera/places.ts';
import { type Pose, viewFrame } from '../../stage/camera/pose.ts';
import { overflowOf, trueSizePose } from '../../stage/camera/size.ts';
import { metAlong, sightlineThrough } from '../../stage/car/pick.ts';
import { softboxRoom } from '../../stage/light/room.ts';
import { Rings } from '../../stage/Rings.tsx';
import type { Studio } from '../../stage/Scene.tsx';
import { Stage } from '../../stage/Stage.tsx';
import { spoonStudio } from '../../stage/spoon/photograph.ts';
import { wornBy } from '../../stage/surface/worn.ts';
import { adapted, type Fineness, finestFor, staysSmooth } from '../../stage/view/fineness.ts';
import { ownersOf } from '../cars/paint.ts';
import { lookOf } from '../pieces/look.ts';
import { pointAt } from '../pointing.ts';
import { useWork } from '../store.ts';
import { startChoosing } from '../table/choosing.ts';
import { bowlPicture } from './bowl.ts';
import { useCamera } from './camera.ts';
import { useMarks } from './marks.ts';
import { type Ground, useGround } from './stands.ts';
import { useStudio } from './studio.ts';
import { serveParts } from './under.ts';
import { frame, useViewing } from './viewing.ts';

interface LiveCarsProps {
  readonly mesh: Mesh;
  /** The element that holds every stand, and scrolls with them. */
  readonly within: RefObject<HTMLElement | null>;
}

/** All live cars of the open work. */
export function LiveCars({ mesh, within }: LiveCarsProps) {
  const { build } = useWork();
  const key = build.alternatives.map(({ id }) => id).join();
  const ground = useGround(within, key);
  if (ground.width < 1 || ground.height < 1) return null;
  return <OnGround mesh={mesh} within={within} ground={ground} standsKey={key} />;
}

interface OnGroundProps extends LiveCarsProps {
  readonly ground: Ground;
  readonly standsKey: string;
}

function OnGround({ mesh, within, ground, standsKey }: OnGroundProps) {
  const { build } = useWork();
  const { light } = build.viewing;
  const stand = ground.stands[0]!;
  const aspect = stand.width / stand.height;
  const isTrueSize = useViewing((viewing) => viewing.isTrueSize);
  const marks = useMarks(build, mesh);
  const owners = useMemo(() => ownersOf(build), [build]);

  const cars = useMemo(
    () =>
      build.alternatives.map((alternative) => ({
        id: alternative.id,
        worn: wornBy(build, alternative, mesh, (finish) => lookOf(finish, light)),
      })),
    [build, light, mesh],
  );
  const stands = useStandIns(ground);

  const { scale } = build;
  const { distanceMm: viewingMm } = build.viewing;
  const shownAs = useCallback(
    (from: Pose, viewHeightPx: number): Pose =>
      isTrueSize ? trueSizePose(from, { scale, viewingMm, viewHeightPx }) : from,
    [isTrueSize, scale, viewingMm],
  );
  const seen = useRef<Pose>(undefined);
  const carMetAt = (x: number, y: number): { carPart: string; place: Vector3 } | undefined => {
    if (seen.current === undefined) return undefined;
    const { fieldDegrees } = seen.current;
    const sight = sightlineThrough(viewFrame(seen.current), fieldDegrees, aspect, x, y);
    const met = metAlong(mesh, sight);
    return met && { carPart: mesh.parts[met.part]!.id, place: met.place };
  };
  const metAt = (x: number, y: number): { owner: string; place: Vector3 } | undefined => {
    const met = carMetAt(x, y);
    const owner = owners.get(met?.carPart ?? '');
    return met === undefined || owner === undefined ? undefined : { owner, place: met.place };
  };
  useEffect(() => serveParts((x, y) => carMetAt(x, y)?.carPart));
  const coversOf = (part: string): readonly string[] =>
    build.parts.find(({ id }) => id === part)?.covers ?? [];
  const { pose, isMoving } = useCamera(mesh, aspect, within, standsKey, {
    onHover(x, y) {
      const met = metAt(x, y);
      pointAt(met === undefined ? [] : [met.owner], true);
    },
    onLeave: () => pointAt([]),
    shownAs: (from) => shownAs(from, stand.height),
    onPress(element, x, y) {
      const met = metAt(x, y);
      const alternative = element.dataset.stand;
      if (met === undefined || alternative === undefined) return;
      startChoosing(alternative, met.owner, element);
      frame(coversOf(met.owner), met.place);
    },
    onFrame(x, y) {
      const met = metAt(x, y);
      if (met !== undefined) frame(coversOf(met.owner), met.place);
    },
  });

  const poseFor = useCallback(
    (_: number, viewHeightPx: number): Pose => shownAs(pose, viewHeightPx),
    [pose, shownAs],
  );
  seen.current = poseFor(aspect, stand.height);
  useEffect(() => {
    const overflow = isTrueSize ? overflowOf(mesh, poseFor(aspect, stand.height), aspect) : 1;
    useViewing.setState({ overflow });
  }, [mesh, isTrueSize, poseFor, aspect, stand.height]);
  const place = useViewing((viewing) => viewing.place);
  useEffect(() => {
    // A place is fitted anew to a view of another shape; a hand's own pose keeps its width in view.
    const isNamed = placesOf(mesh).some(({ id }) => id === place);
    const inShape = (shape: number): Pose =>
      isNamed
        ? poseAt(mesh, place, shape)
        : { ...pose, distanceMm: pose.distanceMm * Math.max(1, aspect / shape) };
    useStudio.setState({ poseFor: inShape });
  }, [mesh, place, pose, aspect]);

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
  const onDue = useCallback(() => canvas.current?.setAttribute('data-picture', 'due'), []);
  const onStudio = useCallback(
    (studio: Studio): void => {
      useStudio.setState({ studio });
      useViewing.setState({ liveness: 'live', places: placesOf(mesh) });
    },
    [mesh],
  );
  useEffect(
    () => () =>
      useStudio.setState({ studio: undefined, poseFor: undefined, photograph: undefined }),
    [],
  );
  useSpoonStudio();
  const studio = useStudio((running) => running.studio);

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
        onStudio={onStudio}
        onDue={onDue}
        onDrawn={onDrawn}
        onFailed={() => useViewing.setState({ liveness: 'impossible' })}
        onLost={() => useViewing.setState({ liveness: 'lost' })}
        onFound={() => useViewing.setState({ liveness: 'live' })}
      />
      <Rings
        studio={studio}
        stands={stands}
        poseFor={poseFor}
        marks={marks}
        width={ground.width}
        height={ground.height}
        fineness={fineness.still}
        isMoving={isMoving}
      />
    </div>
  );
}

/** Spoons are photographed by the same renderer for as long as it runs. */
function useSpoonStudio(): void {
  const gl = useStudio(({ studio }) => studio?.gl);
  const isLive = useViewing(({ liveness }) => liveness === 'live');
  useEffect(() => {
    if (gl === undefined || !isLive) return;
    const spoons = spoonStudio(gl, softboxRoom);
    useStudio.setState({
      photograph: (finish, light) => bowlPicture(spoons, finish, lookOf(finish, light)),
    });
    return () => {
      useStudio.setState({ photograph: undefined });
      spoons.dispose();
    };
  }, [gl, isLive]);
}

/** The stands with the car that is shown on each now. */
function useStandIns(ground: Ground): Ground['stands'] {
  const standIn = useViewing((viewing) => viewing.standIn);
  return useMemo(
    () =>
      ground.stands.map((stand) =>
        standIn !== undefined && (standIn.at === undefined || standIn.at === stand.id)
          ? { ...stand, id: standIn.shown }
          : stand,
      ),
    [ground, standIn],
  );
}

function useFineness({ width, height }: Ground) {
  const [fineness, setFineness] = useState<Fineness>(() =>
    finestFor(width, height, devicePixelRatio),
  );
  useEffect(() => setFineness(finestFor(width, height, devicePixelRatio)), [width, height]);
  return [fineness, setFineness] as const;
}
