/** The link itself: to copy, how long it is, what costs most where it is too long, and to try it. */
import { type ReactNode, useId, useMemo, useRef } from 'react';
import { costsOf } from '../../opinion/link/cost.ts';
import { longestComfortable } from '../../opinion/link/link.ts';
import { useWork } from '../store.ts';
import { CopyText } from './CopyText.tsx';
import { counted, lengthWords } from './length.ts';
import type { Wanted } from './wanted.ts';

interface LinkOutProps {
  readonly address: string;
  readonly wanted: Wanted;
  readonly onChange: (next: Partial<Wanted>) => void;
  /** What is to be said of where it leads. */
  readonly children: ReactNode;
}

/** The address, ready to copy. */
export function LinkOut({ address, wanted, onChange, children }: LinkOutProps) {
  const field = useRef<HTMLInputElement>(null);
  const id = useId();
  const isLong = address.length > longestComfortable;
  const link = address.slice(address.indexOf('#'));
  return (
    <section className="ask-link">
      <h3>The link</h3>
      {children}
      <div className="field">
        <label htmlFor={id}>Address for viewers</label>
        <input
          ref={field}
          id={id}
          type="text"
          readOnly
          dir="ltr"
          value={address}
          aria-describedby={`${id}-told`}
          onFocus={({ currentTarget }) => currentTarget.select()}
        />
        <p id={`${id}-told`} className={isLong ? 'ask-warning' : 'field-hint'}>
          {lengthWords(address.length)}
        </p>
      </div>
      {isLong ? <Costs wanted={wanted} onChange={onChange} /> : null}
      <LeftOut wanted={wanted} onChange={onChange} />
      <div className="buttons">
        <CopyText name="Copy link" field={field} />
        <a className="button" href={`./round.html${link}`} target="_blank" rel="noopener">
          Try it as a viewer
        </a>
      </div>
      <p className="quiet">
        Everything viewers need is in the link itself. It is sent to no server, and their answers
        come back as words.
      </p>
    </section>
  );
}

/** What saves less than these is no help. */
const mostCosts = 4;

type Choosing = Pick<LinkOutProps, 'wanted' | 'onChange'>;

/** What costs most first, each with what viewers would lose and a button that leaves it out. */
function Costs({ wanted, onChange }: Choosing) {
  const { build } = useWork();
  const costs = useMemo(() => costsOf(build, wanted).slice(0, mostCosts), [build, wanted]);
  if (costs.length === 0) return null;
  return (
    <ul className="ask-costs" aria-label="What can be left out, the costliest first">
      {costs.map(({ what, characters, loses, asking }) => (
        <li key={what}>
          <span dir="auto">
            <strong>{sentence(what)}</strong>: {counted(characters)} characters. Without it, viewers
            lose {loses}.
          </span>
          <button type="button" className="button" onClick={() => onChange(asking)}>
            Leave it out<span className="unseen">: {what}</span>
          </button>
        </li>
      ))}
    </ul>
  );
}

const sentence = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);

/** What was left out and has no tick of its own above, to be put back. */
function LeftOut({ wanted, onChange }: Choosing) {
  const names = wanted.withFinishNames === false ? ['the names of finishes'] : [];
  const spectra = wanted.withSpectra === false ? ['their spectra'] : [];
  const out = [...names, ...spectra];
  if (out.length === 0) return null;
  return (
    <p>
      Left out: {out.join(' and ')}.{' '}
      <button
        type="button"
        className="text-button"
        onClick={() => onChange({ withFinishNames: true, withSpectra: true })}
      >
        Put back
      </button>
    </p>
  );
}
