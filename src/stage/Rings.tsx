/**
 * Rings about lit and marked parts, on a canvas of their own over the cars. All cars have one
 * shape, so the parts are asked for once for each camera pose, and every stand gets the same rings.
 */
import { useEffect, useRef } from 'react';
import type { Pose } from './camera/pose.ts';
import type { Stand, Studio } from './Scene.tsx';
import { lookAs, newEye } from './view/eye.ts';
import { type Marks, ringsOf } from './view/ring.ts';

export interface RingsProps {
  readonly studio: Studio | undefined;
  readonly stands: readonly Stand[];
  readonly poseFor: (aspect: number, heightPx: number) => Pose;
  readonly marks: Marks;
  /** Size of the canvas, CSS pixels, and device pixels to one of them. */
  readonly width: number;
  readonly height: number;
  readonly fineness: number;
  /** Nothing is pointed out while the cars move. */
  readonly isMoving: boolean;
}

interface Known {
  readonly key: string;
  readonly ids: Uint8Array;
  readonly width: number;
  readonly height: number;
}

/** The canvas with the rings. */
export function Rings(props: RingsProps) {
  const { studio, stands, poseFor, marks, width, height, fineness, isMoving } = props;
  const canvas = useRef<HTMLCanvasElement>(null);
  const known = useRef<Known>(undefined);
  useEffect(() => {
    const element = canvas.current;
    const paper = element?.getContext('2d');
    if (!element || !paper) return;
    const isBare = marks.lit.size === 0 && marks.marked.size === 0;
    if (isMoving || isBare || studio === undefined) {
      paper.clearRect(0, 0, element.width, element.height);
      return;
    }
    const stand = stands[0];
    if (stand === undefined) return;
    const pose = poseFor(stand.width / stand.height, stand.height);
    const parts = partsSeen(studio, stand, pose, fineness, known.current);
    if (parts === undefined) return;
    known.current = parts;
    const rings = ringsOf(parts.ids, parts.width, parts.height, marks, fineness);
    element.width = Math.round(width * fineness);
    element.height = Math.round(height * fineness);
    const picture = new ImageData(rings, parts.width, parts.height);
    for (const { x, y } of stands) {
      paper.putImageData(picture, Math.round(x * fineness), Math.round(y * fineness));
    }
  }, [studio, stands, poseFor, marks, width, height, fineness, isMoving]);
  return <canvas ref={canvas} className="stage-rings" />;
}

/** The part of every pixel of a stand; the same as before where nothing has changed. */
function partsSeen(
  { scene, drawer, cars }: Studio,
  stand: Stand,
  pose: Pose,
  fineness: number,
  before: Known | undefined,
): Known | undefined {
  const car = cars.values().next().value;
  if (car === undefined) return undefined;
  const width = Math.max(1, Math.round(stand.width * fineness));
  const height = Math.max(1, Math.round(stand.height * fineness));
  const key = JSON.stringify([pose, width, height]);
  if (before?.key === key) return before;
  const eye = lookAs(newEye(), pose, stand.width / stand.height);
  return { key, width, height, ids: drawer.ids(scene, eye, car, width, height) };
}
