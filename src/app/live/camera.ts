/**
 * The one camera: at a place, close to a part, or wherever the builder's hand has taken it. Binds
 * the hand on every stand; tells whether anything moves, so that pixels may coarsen meanwhile.
 */
import { type RefObject, useEffect, useRef, useState } from 'react';
import type { Mesh } from '../../car/mesh.ts';
import { limitsOf } from '../../stage/camera/frame.ts';
import { bindGestures } from '../../stage/camera/gestures.ts';
import { framingPart, placesOf, poseAt, wholeFrom } from '../../stage/camera/places.ts';
import { orbited, type Pose, panned, zoomed } from '../../stage/camera/pose.ts';
import { pointAt } from '../pointing.ts';
import { useGlide } from './glide.ts';
import { lookFrom, useViewing } from './viewing.ts';

export interface Hand {
  readonly onPress: (stand: HTMLElement, x: number, y: number) => void;
  readonly onFrame: (x: number, y: number) => void;
  readonly onHover: (x: number, y: number) => void;
  readonly onLeave: () => void;
  /** The pose that is on screen where this one is the camera's: another at true size. */
  readonly shownAs: (pose: Pose) => Pose;
}

export interface Camera {
  readonly pose: Pose;
  readonly isMoving: boolean;
}

/** Rest this long after the last movement before pixels become fine again, ms. */
const settleMs = 160;

/** The camera over views of this aspect, moved by hands on the stands within `frame`. */
export function useCamera(
  mesh: Mesh,
  aspect: number,
  frame: RefObject<HTMLElement | null>,
  standsKey: string,
  hand: Hand,
): Camera {
  const place = useViewing((viewing) => viewing.place);
  const framed = useViewing((viewing) => viewing.framed);
  const known = (id: string): string =>
    placesOf(mesh).some((one) => one.id === id) ? id : (placesOf(mesh)[0]?.id ?? 'front');
  const { pose, glide, turn, isGliding } = useGlide(poseAt(mesh, known(place), aspect));
  const [isHeld, setHeld] = useState(false);
  const now = useRef({ pose, hand, aspect });
  now.current = { pose, hand, aspect };

  const shown = useRef({ place, framed, aspect });
  useEffect(() => {
    const before = shown.current;
    shown.current = { place, framed, aspect };
    if (framed !== undefined && framed !== before.framed) {
      glide(framingPart(mesh, framed.carParts, now.current.pose, aspect, framed.near));
    } else if (place !== 'own' && place !== before.place) {
      glide(poseAt(mesh, known(place), aspect));
    } else if (place !== 'own' && aspect !== before.aspect) {
      turn(() => poseAt(mesh, known(place), aspect));
    }
  });

  useEffect(() => {
    // Another key means other stands; without one there are none.
    if (standsKey === '') return;
    const limits = limitsOf(mesh);
    const own = (change: (pose: Pose) => Pose): void => {
      turn(change);
      if (useViewing.getState().place !== 'own') {
        useViewing.setState({ place: 'own', framed: undefined });
      }
      rest();
    };
    let resting: ReturnType<typeof setTimeout> | undefined;
    const rest = (): void => {
      setHeld(true);
      clearTimeout(resting);
      resting = setTimeout(() => setHeld(false), settleMs);
    };
    const elements = frame.current?.querySelectorAll<HTMLElement>('[data-stand]') ?? [];
    const undo = [...elements].map((stand) =>
      bindGestures(stand, {
        onOrbit: (azimuth, elevation) => own((from) => orbited(from, azimuth, elevation)),
        // True size is not to be argued with.
        onZoom: (factor) => {
          if (!useViewing.getState().isTrueSize) own((from) => zoomed(from, factor, limits));
        },
        onPan: (x, y) =>
          own((from) => ({
            ...from,
            target: panned(now.current.hand.shownAs(from), x, y, limits).target,
          })),
        onPress: (x, y) => now.current.hand.onPress(stand, x, y),
        onFrame: (x, y) => now.current.hand.onFrame(x, y),
        onHover: (x, y) => now.current.hand.onHover(x, y),
        onLeave: () => now.current.hand.onLeave(),
        onHome: () => lookFrom('front'),
        onGestureStart: () => pointAt([]),
        onGestureEnd: () => {},
      }),
    );
    useViewing.setState({
      steer: {
        zoom: (factor) => own((from) => zoomed(from, factor, limits)),
        stepBack() {
          useViewing.setState({ place: 'own', framed: undefined });
          glide(wholeFrom(mesh, now.current.pose, now.current.aspect));
        },
      },
    });
    return () => {
      useViewing.setState({ steer: undefined });
      clearTimeout(resting);
      for (const unbind of undo) unbind();
    };
  }, [mesh, frame, standsKey, turn, glide]);

  return { pose, isMoving: isHeld || isGliding };
}
