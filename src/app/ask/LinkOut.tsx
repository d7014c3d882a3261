/** The link itself: to copy, how long it is, what costs most where it is too long, and to try it. */
import { type ReactNode, useId, useRef } from 'react';
import { longestComfortable } from '../../opinion/link/link.ts';
import type { Round } from '../../opinion/round.ts';
import { CopyText } from './CopyText.tsx';
import { lengthWords } from './length.ts';
import type { Wanted } from './wanted.ts';

interface LinkOutProps {
  readonly address: string;
  readonly round: Round;
  readonly wanted: Wanted;
  readonly onChange: (next: Partial<Wanted>) => void;
  /** What is to be said of where it leads. */
  readonly children: ReactNode;
}

/** The address, ready to copy. */
export function LinkOut({ address, children }: LinkOutProps) {
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
