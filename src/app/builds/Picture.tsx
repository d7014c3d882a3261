/** The picture of a build in the list; one that has none yet is drawn once it comes into sight. */
import { useEffect, useRef, useState } from 'react';
import { pictureOf } from '../keeping/pictures.ts';
import { keepPicture, readBuild } from '../keeping/store/builds.ts';
import { demoWork, workFromKept } from '../opening/start.ts';
import { newKey } from '../store.ts';

interface ShapeProps {
  /** Key of the build, or the demo; undefined where it cannot be drawn. */
  readonly of: string | undefined;
  readonly picture?: string | undefined;
}

/** Beside the name, which says what it is. */
export function Shape({ of, picture }: ShapeProps) {
  const [drawn, setDrawn] = useState<string>();
  const frame = useRef<HTMLDivElement>(null);
  const isMissing = picture === undefined && of !== undefined;
  useEffect(() => {
    const element = frame.current;
    if (!isMissing || element === null) return;
    let isWanted = true;
    const watch = new IntersectionObserver(([seen]) => {
      if (!seen?.isIntersecting) return;
      watch.disconnect();
      void draw(of).then(
        (address) => {
          if (isWanted) setDrawn(address);
        },
        () => {},
      );
    });
    watch.observe(element);
    return () => {
      isWanted = false;
      watch.disconnect();
    };
  }, [isMissing, of]);
  const shown = picture ?? drawn;
  return (
    <div ref={frame} className="builds-picture">
      {shown === undefined ? null : <img src={shown} alt="" width={168} height={100} />}
    </div>
  );
}

/** One after the other, so that the list stays quick. */
let last: Promise<unknown> = Promise.resolve();

function draw(of: string): Promise<string | undefined> {
  const next = last.then(() => drawNow(of));
  last = next.catch(() => {});
  return next;
}

async function drawNow(of: string): Promise<string | undefined> {
  if (of === 'demo') return pictureOf({ ...(await demoWork()), key: newKey() });
  const kept = await readBuild(of);
  if (kept === undefined) return undefined;
  const work = await workFromKept(kept.document, kept.card.name);
  const picture = await pictureOf({ ...work, key: of });
  if (picture !== undefined) await keepPicture(of, picture);
  return picture;
}
