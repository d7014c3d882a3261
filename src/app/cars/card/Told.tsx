/** What is told over a car: who stands in for it, and the part being pointed at with its finish. */
import { type Alternative, assignmentOf, finishesByRef, letterOf } from '../../../build/build.ts';
import { useShown, useViewing } from '../../live/viewing.ts';
import { usePointing } from '../../pointing.ts';
import { usePreviewing } from '../../sheet/mend/previewing.ts';
import { useWork } from '../../store.ts';
import { Swatch } from './Worn.tsx';

interface ToldProps {
  readonly alternative: Alternative;
  readonly letter: string;
}

/** The lines in the upper corner of a picture. */
export function Told({ alternative, letter }: ToldProps) {
  const { build } = useWork();
  const shownId = useShown(alternative.id);
  const at = build.alternatives.findIndex(({ id }) => id === shownId);
  const shown = build.alternatives[at] ?? alternative;
  const isForAll = useViewing(({ standIn }) => standIn !== undefined && standIn.at === undefined);
  const isOther = shown !== alternative;
  return (
    <div className="told">
      <p className="standing-in" role={isForAll ? undefined : 'status'}>
        {isOther ? (
          <>
            <strong>{letterOf(at)}</strong> in the place of {letter}
          </>
        ) : null}
      </p>
      <Tried alternative={alternative.id} />
      <Pointed shown={shown} />
    </div>
  );
}

/** The remedy its car wears for the eye only; what it would change stands beside its button. */
function Tried({ alternative }: { alternative: string }) {
  const preview = usePreviewing((now) => now.preview);
  if (preview?.alternative !== alternative) return null;
  return (
    <p className="pointed tried" aria-hidden="true">
      <strong>Not done yet:</strong> {preview.label}
    </p>
  );
}

/** Name and finish of the part being pointed at; the part table says the same to screen readers. */
function Pointed({ shown }: { shown: Alternative }) {
  const { build } = useWork();
  const lit = usePointing(({ parts }) => parts);
  const part = lit.length === 1 ? build.parts.find(({ id }) => id === lit[0]) : undefined;
  if (part === undefined) return null;
  const finish = finishesByRef(build).get(assignmentOf(build, shown).get(part.id) ?? '');
  return (
    <p className="pointed" aria-hidden="true">
      {finish === undefined ? null : <Swatch finish={finish} light={build.viewing.light} />}
      <strong dir="auto">{part.name}</strong> <bdi>{finish?.name}</bdi>
    </p>
  );
}
