/** One alternative on the stage: its letter and name, its picture, its number and worst finding. */
import { useEffect, useRef, useState } from 'react';
import { AlternativeName } from '../alternatives/AlternativeName.tsx';
import type { Staged } from '../onStage.ts';
import type { View } from '../opening/garage.ts';
import { Bar } from '../pieces/Bar.tsx';
import { useSheet } from '../sheet/compared.ts';
import { Finding } from '../sheet/Finding.tsx';
import { useWork } from '../store.ts';
import { Blink } from './card/Blink.tsx';
import { Stand } from './card/Stand.tsx';
import { Told } from './card/Told.tsx';
import { Worn } from './card/Worn.tsx';
import { carElementId } from './element.ts';
import { Picture } from './Picture.tsx';

interface CarCardProps {
  readonly staged: Staged;
  readonly view: View;
}

/** An alternative as a picture with its verdict. */
export function CarCard({ staged, view }: CarCardProps) {
  const { alternative, letter } = staged;
  const sheet = useSheet(alternative.id);
  const worst = sheet?.evidence[0];
  return (
    <article className="car" id={carElementId(alternative.id)} aria-label={`Alternative ${letter}`}>
      <header className="car-head">
        <h2>
          <AlternativeName staged={staged} />
        </h2>
        {sheet === undefined ? null : <Overall value={sheet.overall} />}
        <Worn alternative={alternative} letter={letter} />
      </header>
      <div className="picture-frame">
        <Picture alternative={alternative} letter={letter} view={view} />
        <Stand alternative={alternative.id} letter={letter} />
        <Told alternative={alternative} letter={letter} />
        <div className="car-tools">
          <Blink alternative={alternative.id} letter={letter} />
        </div>
      </div>
      <div className="car-verdict">
        {sheet?.broken.map((sentence) => (
          <p key={sentence} className="breaks">
            <strong>Breaks a rule.</strong> {sentence}
          </p>
        ))}
        {worst === undefined ? <p>Nothing to remark.</p> : <Finding evidence={worst} />}
      </div>
    </article>
  );
}

/** The overall number and where it stood before the last change, if that change moved it. */
function Overall({ value }: { value: number }) {
  const { build } = useWork();
  const now = Math.round(value);
  const shown = useRef({ now, build });
  const [before, setBefore] = useState<number>();
  useEffect(() => {
    if (shown.current.build === build) return;
    setBefore(shown.current.now);
    shown.current = { now, build };
  }, [now, build]);
  return (
    <p className="overall">
      {before === undefined || before === now ? null : (
        <span className="overall-before">was {before}</span>
      )}
      <span className="overall-value">
        <span className="unseen">Overall </span>
        {now}
        <span className="unseen"> of 100</span>
      </span>
      <Bar value={value} />
    </p>
  );
}
