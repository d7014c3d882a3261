/** @jsxImportSource preact */
/** The same cars, to be turned: fetched only when asked for, since it weighs more than all the rest. */
import { useEffect, useRef, useState } from 'preact/hooks';
import type { Turned } from './turn/mount.tsx';

/** A button, and the cars once it has been pressed. */
export function Turning(turned: Turned) {
  const [isWanted, setIsWanted] = useState(false);
  return (
    <section class="round-turning" aria-label="The cars in 3D">
      <button
        type="button"
        class="button"
        aria-expanded={isWanted}
        onClick={() => setIsWanted(!isWanted)}
      >
        {isWanted ? 'Put the 3D away' : 'Turn it in 3D'}
      </button>
      {isWanted ? <Brought {...turned} /> : null}
    </section>
  );
}

function Brought({ round, car, letters }: Turned) {
  const host = useRef<HTMLDivElement>(null);
  const [state, setState] = useState<'coming' | 'here' | 'missing'>('coming');
  useEffect(() => {
    let isWanted = true;
    let takeAway: (() => void) | undefined;
    import('./turn/mount.tsx').then(
      ({ mountTurn }) => {
        if (!isWanted || host.current === null) return;
        takeAway = mountTurn(host.current, { round, car, letters });
        setState('here');
        host.current.scrollIntoView({ block: 'start' });
      },
      () => {
        if (isWanted) setState('missing');
      },
    );
    return () => {
      isWanted = false;
      takeAway?.();
    };
  }, [round, car, letters]);
  return (
    <>
      <p role="status">{words[state]}</p>
      <div ref={host} class={state === 'missing' ? '' : 'round-turned'} />
    </>
  );
}

const words = {
  coming: 'Fetching the cars to turn…',
  here: '',
  missing:
    'The cars to turn could not be fetched. You can answer without them; reloading the page may bring them.',
} as const;
