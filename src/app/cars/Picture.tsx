/**
 * One car in one view, painted as an alternative. Pointing at a part lights it everywhere; a click
 * opens its spoons. The same can be done by keyboard from the part table.
 */
import { useEffect, useMemo, useRef } from 'react';
import { type Alternative, assignmentOf, type Build, finishesByRef } from '../../build/build.ts';
import type { View } from '../opening/garage.ts';
import { type Pointing, pointAt, usePointing } from '../pointing.ts';
import { useWork } from '../store.ts';
import { startChoosing } from '../table/choosing.ts';
import { ownersOf, paintOf } from './paint.ts';
import { drawingOf, lightIn, partUnder } from './trace.ts';

interface PictureProps {
  readonly alternative: Alternative;
  readonly letter: string;
  readonly view: View;
}

/** A recolourable picture of the car. */
export function Picture({ alternative, letter, view }: PictureProps) {
  const { build, car } = useWork();
  const host = useRef<HTMLDivElement>(null);
  const drawing = useMemo(() => drawingOf(view), [view]);
  const paint = useMemo(
    () => paintOf(build, alternative, car.sight),
    [build, alternative, car.sight],
  );

  useEffect(() => host.current?.replaceChildren(drawing), [drawing]);

  useEffect(() => {
    for (const [name, value] of paint) drawing.style.setProperty(name, value);
  }, [drawing, paint]);

  useEffect(() => {
    const show = ({ parts, isGentle }: Pick<Pointing, 'parts' | 'isGentle'>): void => {
      const covered = build.parts.filter(({ id }) => parts.includes(id));
      lightIn(drawing, new Set(covered.flatMap(({ covers }) => covers)), isGentle);
    };
    show(usePointing.getState());
    return usePointing.subscribe((now, before) => {
      if (now.parts !== before.parts) show(now);
    });
  }, [build.parts, drawing]);

  useEffect(() => {
    const owners = ownersOf(build);
    const pointed = ({ target }: Event): string | undefined => owners.get(partUnder(target) ?? '');
    const over = (event: Event): void => {
      const owner = pointed(event);
      pointAt(owner === undefined ? [] : [owner], true);
    };
    const leave = (): void => pointAt([]);
    const press = (event: Event): void => {
      const owner = pointed(event);
      if (owner !== undefined) startChoosing(alternative.id, owner, drawing);
    };
    drawing.addEventListener('pointerover', over);
    drawing.addEventListener('pointerleave', leave);
    drawing.addEventListener('click', press);
    return () => {
      drawing.removeEventListener('pointerover', over);
      drawing.removeEventListener('pointerleave', leave);
      drawing.removeEventListener('click', press);
    };
  }, [alternative.id, build, drawing]);

  return (
    <div
      ref={host}
      className="picture"
      role="img"
      aria-label={`${letter}, ${view.name.toLowerCase()}. ${wordsFor(build, alternative)}`}
    />
  );
}

/** The picture in words: every open part and what it wears. */
function wordsFor(build: Build, alternative: Alternative): string {
  const finishes = finishesByRef(build);
  const assignment = assignmentOf(build, alternative);
  return build.parts
    .filter((part) => 'candidates' in part)
    .map((part) => `${part.name}: ${finishes.get(assignment.get(part.id) ?? '')?.name ?? 'none'}`)
    .join('; ');
}
