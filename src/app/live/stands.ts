/**
 * Where on the page the cars stand: every element with `data-stand`, measured against the frame
 * that holds them all, and again whenever the page changes shape.
 */
import { type RefObject, useLayoutEffect, useState } from 'react';
import type { Stand } from '../../stage/Scene.tsx';

export interface Ground {
  /** What the canvas covers, CSS pixels within the frame. */
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
  readonly stands: readonly Stand[];
}

const nothing: Ground = { left: 0, top: 0, width: 0, height: 0, stands: [] };

/** The ground within `frame`; measured again when `key` changes. */
export function useGround(frame: RefObject<HTMLElement | null>, key: string): Ground {
  const [ground, setGround] = useState(nothing);
  useLayoutEffect(() => {
    const element = frame.current;
    // Another key means other elements; without one there are none.
    if (element === null || key === '') return;
    const measure = (): void => {
      const measured = groundIn(element);
      setGround((before) => (isSame(before, measured) ? before : measured));
    };
    measure();
    const watching = new ResizeObserver(measure);
    watching.observe(element);
    for (const stand of standsIn(element)) watching.observe(stand);
    return () => watching.disconnect();
  }, [frame, key]);
  return ground;
}

const standsIn = (frame: HTMLElement): HTMLElement[] => [
  ...frame.querySelectorAll<HTMLElement>('[data-stand]'),
];

function groundIn(frame: HTMLElement): Ground {
  const origin = frame.getBoundingClientRect();
  const boxes = standsIn(frame).map((element) => {
    const { left, top, width, height } = element.getBoundingClientRect();
    return {
      id: element.dataset.stand ?? '',
      x: left - origin.left + frame.scrollLeft,
      y: top - origin.top + frame.scrollTop,
      width,
      height,
    };
  });
  if (boxes.length === 0) return nothing;
  const left = Math.min(...boxes.map(({ x }) => x));
  const top = Math.min(...boxes.map(({ y }) => y));
  return {
    left,
    top,
    width: Math.max(...boxes.map(({ x, width }) => x + width)) - left,
    height: Math.max(...boxes.map(({ y, height }) => y + height)) - top,
    stands: boxes.map((box) => ({ ...box, x: box.x - left, y: box.y - top })),
  };
}

const isSame = (one: Ground, other: Ground): boolean =>
  JSON.stringify(one) === JSON.stringify(other);
