/**
 * One car in one view, painted as an alternative. Pointing at a part lights it everywhere; a click
 * opens its spoons. The same can be done by keyboard from the part table.
 */
import { useEffect, useMemo, useRef } from 'react';
import type { Alternative, Build } from '../../build/build.ts';
import { absentCarParts } from '../../build/fitted.ts';
import type { SightTable } from '../../car/table.ts';
import { useShownBuild } from '../finish/trying.ts';
import { differingParts } from '../live/marks.ts';
import { useShown, useViewing } from '../live/viewing.ts';
import { useStagedBuild } from '../onStage.ts';
import type { View } from '../opening/garage.ts';
import { type Pointing, pointAt, usePointing } from '../pointing.ts';
import { useWork } from '../store.ts';
import { startChoosing } from '../table/choosing.ts';
import { ownersOf, type Paint, paintOf } from './paint.ts';
import { drawingOf, leaveOutIn, lightIn, markIn, paintIn, partUnder } from './trace.ts';

interface PictureProps {
  readonly alternative: Alternative;
  readonly letter: string;
  readonly view: View;
}

/** A recolourable picture of the car. */
export function Picture({ alternative, letter, view }: PictureProps) {
  const { build, car } = useWork();
  // A change of finish leaves the parts as they are, and all that hangs on them with it.
  const { parts } = build;
  const host = useRef<HTMLDivElement>(null);
  const drawing = useMemo(() => drawingOf(view), [view]);
  const shownId = useShown(alternative.id);
  const shownBuild = useShownBuild();
  const shown = shownBuild.alternatives.find(({ id }) => id === shownId) ?? alternative;
  const paint = usePaint(shownBuild, shown, car.sight);

  useEffect(() => host.current?.replaceChildren(drawing), [drawing]);

  const shownPaint = useRef<{ drawing: SVGSVGElement; paint: Paint }>(undefined);
  useEffect(() => {
    const before = shownPaint.current?.drawing === drawing ? shownPaint.current.paint : undefined;
    paintIn(drawing, new Map([...paint].filter(([name, value]) => before?.get(name) !== value)));
    shownPaint.current = { drawing, paint };
  }, [drawing, paint]);

  const absent = [...absentCarParts(build, car.sight.parts)].join(' ');
  useEffect(() => leaveOutIn(drawing, new Set(absent.split(' '))), [drawing, absent]);

  const isMarking = useViewing((viewing) => viewing.isMarking);
  const compared = useStagedBuild();
  const marked = isMarking ? differingParts(compared).join(' ') : '';
  useEffect(() => markIn(drawing, coveredBy(parts, marked.split(' '))), [drawing, parts, marked]);

  useEffect(() => {
    const show = (now: Pick<Pointing, 'parts' | 'isGentle'>): void =>
      lightIn(drawing, coveredBy(parts, now.parts), now.isGentle);
    show(usePointing.getState());
    return usePointing.subscribe((now, before) => {
      if (now.parts !== before.parts) show(now);
    });
  }, [parts, drawing]);

  useEffect(() => {
    const owners = ownersOf({ parts });
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
  }, [alternative.id, parts, drawing]);

  return (
    <div
      ref={host}
      className="picture"
      role="img"
      aria-label={`Drawing of ${letter}, ${view.name.toLowerCase()}`}
    />
  );
}

/** The colours of one car; what changes on another leaves them as they are. */
function usePaint(build: Build, alternative: Alternative, sight: SightTable): Paint {
  const { parts, finishes, viewing } = build;
  return useMemo(
    () => paintOf({ parts, finishes, viewing }, alternative, sight),
    [parts, finishes, viewing, alternative, sight],
  );
}

/** Car part ids that the parts with these ids cover. */
const coveredBy = (parts: Build['parts'], ids: readonly string[]): ReadonlySet<string> =>
  new Set(parts.filter(({ id }) => ids.includes(id)).flatMap(({ covers }) => covers));
