/** Is it kept? A quiet word, spoken only where a change takes its time. */
import { useEffect, useState } from 'react';
import { type KeptState, useStatus } from '../keeping/status.ts';

const words: Readonly<Record<KeptState, string>> = {
  none: '',
  keeping: 'Keeping…',
  kept: 'Kept',
  unkept: 'Not kept',
};
const meanings: Readonly<Record<KeptState, string>> = {
  none: '',
  keeping: 'Your last change is being kept in this browser',
  kept: 'Every change so far is kept in this browser; undo goes back as far as this visit',
  unkept: 'Your last changes are not kept in this browser',
};
/** Keeping mostly takes less than this, ms, and a word that flickers tells nothing. */
const slowMs = 300;

/** `data-kept` says it at once, the word once it has lasted. */
export function Kept() {
  const state = useStatus((status) => status.state);
  const [told, setTold] = useState(state);
  useEffect(() => {
    const timer = setTimeout(() => setTold(state), state === 'keeping' ? slowMs : 0);
    return () => clearTimeout(timer);
  }, [state]);
  return (
    <p className="kept" role="status" data-kept={state} title={meanings[told]}>
      {words[told]}
    </p>
  );
}
