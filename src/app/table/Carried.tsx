/** The spoon in the hand, and in words what letting go of it would do. */
import { useLayoutEffect, useRef } from 'react';
import { type Build, type EmbeddedFinish, isOpen, letterOf } from '../../build/build.ts';
import type { SightTable } from '../../car/table.ts';
import { Bowl } from '../pieces/Spoon.tsx';
import { useWork } from '../store.ts';
import { type Over, useCarrying } from './carrying.ts';

/** Nothing while no spoon is carried. */
export function Carried() {
  const finish = useCarrying(({ carried }) => carried?.finish);
  return finish === undefined ? null : <InHand finish={finish} />;
}

function InHand({ finish }: { finish: EmbeddedFinish }) {
  const { build, car } = useWork();
  const over = useCarrying(({ carried }) => carried?.over);
  const hand = useRef<HTMLDivElement>(null);
  useLayoutEffect(() => {
    const element = hand.current;
    if (element === null) return;
    // A popover lies over open dialogs; where there is none, the spoon lies beneath them.
    element.popover = 'manual';
    element.showPopover?.();
    const follow = (): void => {
      const { carried } = useCarrying.getState();
      if (carried !== undefined) {
        element.style.transform = `translate(${carried.x}px, ${carried.y}px)`;
        element.classList.toggle('is-beyond-middle', carried.x > window.innerWidth / 2);
      }
    };
    follow();
    return useCarrying.subscribe(follow);
  }, []);
  const isRefused = over?.carPart !== undefined && over.part === undefined;
  useLayoutEffect(() => {
    const { documentElement } = document;
    documentElement.toggleAttribute('data-refused', isRefused);
    return () => documentElement.removeAttribute('data-refused');
  }, [isRefused]);
  return (
    <div ref={hand} className={isRefused ? 'carried is-refused' : 'carried'} aria-hidden="true">
      <Bowl finish={finish} light={build.viewing.light} />
      <p>
        <strong dir="auto">{finish.name}</strong>
        <span>{wordsFor(build, car.sight, over)}</span>
      </p>
    </div>
  );
}

/** What letting go here would do. */
function wordsFor(build: Build, sight: SightTable, over: Over | undefined): string {
  if (over?.carPart === undefined) return 'Let go on a part of a car';
  const part = build.parts.find(({ id }) => id === over.part);
  const at = build.alternatives.findIndex(({ id }) => id === over.alternative);
  if (part === undefined) {
    const name = sight.parts.find(({ id }) => id === over.carPart)?.name ?? 'this part';
    return `Not onto ${name}: nothing is painted there`;
  }
  const place = `onto ${part.name} of ${letterOf(at)}`;
  return !isOpen(part) && part.painted ? `${place}: painted already, means stripping` : place;
}
