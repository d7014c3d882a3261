/**
 * Where the cars do not fit side by side: a letter for each, which brings it into sight. A finger on
 * a car turns it, so the strip is moved from here or by swiping on words.
 */
import { type RefObject, useEffect, useState } from 'react';
import { useStaged } from '../onStage.ts';
import { carElementId } from './element.ts';

interface LettersProps {
  /** The strip that scrolls. */
  readonly strip: RefObject<HTMLElement | null>;
}

/** The row of letters; nothing where every car is in sight. */
export function Letters({ strip }: LettersProps) {
  const staged = useStaged();
  const key = staged.map(({ alternative }) => alternative.id).join();
  const { isCut, first } = useStrip(strip, key);
  if (!isCut) return null;
  return (
    <nav className="letters" aria-label="Cars">
      {staged.map(({ alternative: { id, name }, letter }, at) => (
        <button
          key={id}
          type="button"
          aria-label={`${letter}, ${name}`}
          aria-current={at === first}
          onClick={() =>
            document
              .getElementById(carElementId(id))
              ?.scrollIntoView({ block: 'nearest', inline: 'start' })
          }
        >
          {letter}
        </button>
      ))}
    </nav>
  );
}

interface Cut {
  readonly isCut: boolean;
  /** Position of the first car that is mostly in sight. */
  readonly first: number;
}

function useStrip(strip: RefObject<HTMLElement | null>, key: string): Cut {
  const [cut, setCut] = useState<Cut>({ isCut: false, first: 0 });
  useEffect(() => {
    const element = strip.current;
    if (element === null || key === '') return;
    const read = (): void => {
      const { scrollLeft, clientWidth } = element;
      const wide = element.querySelector('.car')?.clientWidth ?? clientWidth;
      const count = key.split(',').length;
      // Of the cars alone: their live picture may still be as wide as it was before a change.
      const carsWidth = count * wide;
      const isCut = carsWidth > clientWidth + count;
      const isAtEnd = Math.ceil(scrollLeft) + clientWidth >= carsWidth - count;
      const inSight = Math.max(1, Math.round(clientWidth / wide));
      const first = isAtEnd ? count - inSight : Math.round(scrollLeft / wide);
      setCut((before) =>
        before.isCut === isCut && before.first === first ? before : { isCut, first },
      );
    };
    read();
    const watching = new ResizeObserver(read);
    watching.observe(element);
    element.addEventListener('scroll', read, { passive: true });
    return () => {
      watching.disconnect();
      element.removeEventListener('scroll', read);
    };
  }, [strip, key]);
  return cut;
}
