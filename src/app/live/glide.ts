/**
 * The camera's pose over time: at once where the builder turns it or wants no motion, in a short
 * glide from place to place.
 */
import { useCallback, useEffect, useRef, useState } from 'react';
import { between, type Pose } from '../../stage/camera/pose.ts';

const glideMs = 420;
const wantsStillness = (): boolean => matchMedia('(prefers-reduced-motion: reduce)').matches;

export interface Gliding {
  readonly pose: Pose;
  /** Moves to a pose over time. */
  readonly glide: (to: Pose) => void;
  /** Changes the pose at once. */
  readonly turn: (change: (pose: Pose) => Pose) => void;
  readonly isGliding: boolean;
}

/** A pose that glides. */
export function useGlide(first: Pose): Gliding {
  const [pose, setPose] = useState(first);
  const [isGliding, setGliding] = useState(false);
  const now = useRef(pose);
  now.current = pose;
  const frame = useRef(0);
  useEffect(() => () => cancelAnimationFrame(frame.current), []);

  const glide = useCallback((to: Pose): void => {
    cancelAnimationFrame(frame.current);
    if (wantsStillness()) {
      setPose(to);
      return;
    }
    const from = now.current;
    const start = performance.now();
    setGliding(true);
    const step = (): void => {
      const share = Math.min(1, (performance.now() - start) / glideMs);
      setPose(between(from, to, share * share * (3 - 2 * share)));
      if (share < 1) frame.current = requestAnimationFrame(step);
      else setGliding(false);
    };
    frame.current = requestAnimationFrame(step);
  }, []);
  const turn = useCallback((change: (pose: Pose) => Pose): void => {
    cancelAnimationFrame(frame.current);
    setGliding(false);
    setPose(change);
  }, []);
  return { pose, glide, turn, isGliding };
}
