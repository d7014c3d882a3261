/**
 * The cars in three dimensions, laid over the places where their drawings stand. Loaded after the
 * page itself; one camera for all, moved by mouse, finger and keyboard.
 */
import { type RefObject, useCallback, useEffect, useMemo, useRef } from 'react';
import type { Mesh } from '../../car/mesh.ts';
import { placesOf, poseAt } from '../../stage/camera/places.ts';
import type { Pose } from '../../stage/camera/pose.ts';
import { overflowOf, trueSizePose } from '../../stage/camera/size.ts';
import { softboxRoom } from '../../stage/light/room.ts';
import { Rings } from '../../stage/Rings.tsx';
import type { Studio } from '../../stage/Scene.tsx';
import { spoonStudio } from '../../stage/spoon/photograph.ts';
import { wornBy } from '../../stage/surface/worn.ts';
import { useShownBuild } from '../finish/trying.ts';
import { useStaged, useStagedBuild } from '../onStage.ts';
import { useOverlay } from '../overlay/overlay.ts';
import { lookOf } from '../pieces/look.ts';
import { pointAt } from '../pointing.ts';
import { useWork } from '../store.ts';
import { startChoosing, useChoosing } from '../table/choosing.ts';
import { bowlPicture } from './bowl.ts';
import { useCamera } from './camera.ts';
import { LiveCanvas } from './canvas/LiveCanvas.tsx';
import { insightOf } from './insight.ts';
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
  const key = useStaged()
    .map(({ alternative }) => alternative.id)
    .join();
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
  const marks = useMarks(useStagedBuild(), mesh);

  const shownBuild = useShownBuild();
  const cars = useMemo(
    () =>
      shownBuild.alternatives.map((alternative) => ({
        id: alternative.id,
        worn: wornBy(shownBuild, alternative, mesh, (finish) => lookOf(finish, light)),
      })),
    [shownBuild, light, mesh],
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
  const insight = useMemo(
    () =>
      insightOf({
        mesh,
        build,
        width: stand.width,
        height: stand.height,
        pose: () => seen.current,
      }),
    [mesh, build, stand.width, stand.height],
  );
  useEffect(() => serveParts(insight.carPartAt), [insight]);
  const shown = useRef(insight);
  shown.current = insight;
  // Spoons or a card that are opened from the table bring their part into sight, where it is not.
  const chosenFor = useChoosing((choosing) => choosing.cell?.part);
  const carded = useOverlay(({ overlay }) => (overlay?.kind === 'part' ? overlay.part : undefined));
  const sought = chosenFor ?? carded;
  useEffect(() => {
    const { isHidden, coversOf } = shown.current;
    if (sought !== undefined && isHidden(sought)) frame(coversOf(sought));
  }, [sought]);
  const { pose, isMoving } = useCamera(mesh, aspect, within, standsKey, {
    onHover(x, y) {
      const hit = insight.hitAt(x, y);
      pointAt(hit === undefined ? [] : [hit.owner], true);
    },
    onLeave: () => pointAt([]),
    shownAs: (from) => shownAs(from, stand.height),
    onPress(element, x, y) {
      const hit = insight.pressedAt(x, y);
      const alternative = element.dataset.stand;
      if (hit === undefined || alternative === undefined) return;
      startChoosing(alternative, hit.owner, element);
      frame(insight.coversOf(hit.owner), hit.place);
    },
    onFrame(x, y) {
      const hit = insight.hitAt(x, y);
      if (hit !== undefined) frame(insight.coversOf(hit.owner), hit.place);
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

  const onStudio = useCallback((studio: Studio): void => useStudio.setState({ studio }), []);
  useEffect(
    () => () =>
      useStudio.setState({ studio: undefined, poseFor: undefined, photograph: undefined }),
    [],
  );
  useSpoonStudio();
  const studio = useStudio((running) => running.studio);

  return (
    <LiveCanvas
      mesh={mesh}
      cars={cars}
      ground={ground}
      stands={stands}
      poseFor={poseFor}
      isMoving={isMoving}
      onStudio={onStudio}
      over={(fineness) => (
        <Rings
          studio={studio}
          stands={stands}
          poseFor={poseFor}
          marks={marks}
          width={ground.width}
          height={ground.height}
          fineness={fineness}
          isMoving={isMoving}
        />
      )}
    />
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
