/**
 * What is in sight on the stands now, and what does a hand on them mean? Asked of the mesh for
 * single points, of a small picture of part numbers for how much of a part shows.
 *
 * In: points of a view, −1…1 with y up. Out: ids of parts of the build, shares of the view 0–1.
 */
import { type Build, isOpen } from '../../build/build.ts';
import type { Mesh } from '../../car/mesh.ts';
import type { Vector3 } from '../../ground/vector.ts';
import { type Pose, viewFrame } from '../../stage/camera/pose.ts';
import { metAlong, sightlineThrough } from '../../stage/car/pick.ts';
import { lookAs, newEye } from '../../stage/view/eye.ts';
import { ownersOf } from '../cars/paint.ts';
import { useStudio } from './studio.ts';

export interface Hit {
  /** Part of the build. */
  readonly owner: string;
  /** Where, full-size mm. */
  readonly place: Vector3;
}

export interface Insight {
  /** Part of the car at a point, whether or not the build covers it. */
  carPartAt(x: number, y: number): string | undefined;
  hitAt(x: number, y: number): Hit | undefined;
  /** What a press means: what it hits, or a small open part within a finger's breadth of that. */
  pressedAt(x: number, y: number): Hit | undefined;
  /** Whether a part of the build is as good as out of sight. */
  isHidden(part: string): boolean;
  /** Parts of the car that a part of the build covers. */
  coversOf(part: string): readonly string[];
}

export interface Sight {
  readonly mesh: Mesh;
  readonly build: Build;
  /** Size of a view, CSS pixels. */
  readonly width: number;
  readonly height: number;
  /** The pose on screen; undefined before the first. */
  readonly pose: () => Pose | undefined;
}

/** A press this far from a small open part still means it, CSS pixels. */
const snapPx = 7;
/** Shares of the view under which a part is small, and under which it is as good as hidden. */
const smallShare = 0.02;
const hiddenShare = 0.0012;
/** Pixels across of the picture that is asked what is in sight. */
const askedWidth = 200;

/** What is in sight of cars of this shape. */
export function insightOf({ mesh, build, width, height, pose }: Sight): Insight {
  const owners = ownersOf(build);
  const aspect = width / height;
  const open = new Set(build.parts.filter(isOpen).map(({ id }) => id));
  const coversOf = (part: string): readonly string[] =>
    build.parts.find(({ id }) => id === part)?.covers ?? [];

  const metAt = (x: number, y: number): { carPart: string; place: Vector3 } | undefined => {
    const now = pose();
    if (now === undefined) return undefined;
    const sight = sightlineThrough(viewFrame(now), now.fieldDegrees, aspect, x, y);
    const met = metAlong(mesh, sight);
    return met && { carPart: mesh.parts[met.part]!.id, place: met.place };
  };
  const hitAt = (x: number, y: number): Hit | undefined => {
    const met = metAt(x, y);
    const owner = owners.get(met?.carPart ?? '');
    return met === undefined || owner === undefined ? undefined : { owner, place: met.place };
  };
  /** Share of the view that shows a part now; all of it where nobody can tell. */
  const shareOf = (part: string): number => {
    const { studio } = useStudio.getState();
    const car = studio?.cars.values().next().value;
    const now = pose();
    if (studio === undefined || car === undefined || now === undefined) return 1;
    const tall = Math.max(1, Math.round(askedWidth / aspect));
    const ids = studio.drawer.ids(
      studio.scene,
      lookAs(newEye(), now, aspect),
      car,
      askedWidth,
      tall,
    );
    const covers = coversOf(part);
    const wanted = new Set(
      mesh.parts.flatMap(({ id }, at) => (covers.includes(id) ? [at + 1] : [])),
    );
    let count = 0;
    for (let at = 0; at < ids.length; at += 4) if (wanted.has(ids[at]!)) count++;
    return count / (askedWidth * tall);
  };

  return {
    carPartAt: (x, y) => metAt(x, y)?.carPart,
    hitAt,
    pressedAt(x, y) {
      const hit = hitAt(x, y);
      if (hit !== undefined && open.has(hit.owner)) return hit;
      for (let k = 0; k < 8; k++) {
        const turn = (k * Math.PI) / 4;
        const aside = hitAt(
          x + (2 * snapPx * Math.cos(turn)) / width,
          y + (2 * snapPx * Math.sin(turn)) / height,
        );
        if (aside !== undefined && open.has(aside.owner) && shareOf(aside.owner) < smallShare) {
          return aside;
        }
      }
      return hit;
    },
    isHidden: (part) => shareOf(part) < hiddenShare,
    coversOf,
  };
}
