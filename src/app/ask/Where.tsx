/** Where do the page's files stand? Told plainly where nobody else could open the link. */
import { useId, useState } from 'react';
import { Field } from '../pieces/Field.tsx';
import { baseFrom, type Reach, reachOf } from './base.ts';

interface WhereProps {
  readonly base: string;
  /** Takes an address, or nothing for this page's own. */
  readonly onBase: (base: string | undefined) => void;
}

const words: Readonly<Record<Reach, string>> = {
  anyone: '',
  network: 'Only people in the same network can open it: this page stands on a machine of yours.',
  machine: 'Nobody else can open it yet: this page stands on your own machine only.',
};

/** What is said of the address, and the field to give another; quiet where anyone can open it. */
export function Where({ base, onBase }: WhereProps) {
  const reach = reachOf(base);
  const own = reachOf(document.baseURI);
  const [isAsked, setAsked] = useState(false);
  const id = useId();
  if (reach === 'anyone' && own === 'anyone' && !isAsked) {
    return (
      <p>
        <button type="button" className="text-button" onClick={() => setAsked(true)}>
          The page’s files stand elsewhere too…
        </button>
      </p>
    );
  }
  return (
    <div className="ask-where">
      {words[reach] === '' ? null : (
        <p className="ask-warning" id={id}>
          {words[reach]}
        </p>
      )}
      <Field
        label="Address where the page’s files stand"
        value={reach === 'machine' ? '' : base}
        hint={
          <>
            Copy everything in <code>dist/app</code> to any static web host, once, and give its
            address here. It is remembered in this browser.
          </>
        }
        onType={(text) => {
          if (text.trim() === '') {
            onBase(undefined);
            return undefined;
          }
          const typed = baseFrom(text);
          if ('fault' in typed) return typed.fault;
          onBase(typed.base);
          return undefined;
        }}
      />
    </div>
  );
}
