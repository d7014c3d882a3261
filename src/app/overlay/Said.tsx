/** The line at the foot of the window: what was just done, and Undo; goes by itself after a while. */
import { useEffect, useRef } from 'react';
import { hushUp, takeBack, useSaying } from '../pieces/said.ts';
import './said.css';

/** How long the line stays while nobody is at it, ms; undo in the head stays for good. */
const staysMs = 12_000;

/** Always there, so that screen readers hear what appears in it. */
export function Said() {
  const { words, isDone, way } = useSaying();
  const line = useRef<HTMLDivElement>(null);
  useEffect(() => {
    if (words === undefined) return;
    const go = (): void => {
      const isTended = line.current?.matches(':hover, :focus-within') ?? false;
      if (!isTended) hushUp();
    };
    const timer = setInterval(go, staysMs);
    return () => clearInterval(timer);
  }, [words]);
  return (
    <div ref={line} className="said" role="status">
      {words === undefined ? null : (
        <p>
          <span>{words}</span>
          <span className="said-ways">
            {way === undefined ? null : (
              <button type="button" className="text-button" onClick={way.go}>
                {way.name}
              </button>
            )}
            {isDone ? (
              <button type="button" className="text-button" onClick={takeBack}>
                Undo
              </button>
            ) : null}
            <button type="button" className="text-button" onClick={hushUp}>
              Close
            </button>
          </span>
        </p>
      )}
    </div>
  );
}
