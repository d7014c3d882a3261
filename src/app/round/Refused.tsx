/** @jsxImportSource preact */
/** What if the link cannot be shown? The page says which fault it is, how much came, what helps. */
import type { ComponentChildren } from 'preact';
import { LinkError } from '../../opinion/link/link.ts';
import { bowl, neck } from '../pieces/drawn/bowl.ts';

const again = (
  <>
    Open the link from the original post rather than from a copy of it, or ask whoever posted it to
    send it again.
  </>
);

/** A link that is cut, altered, too new or none of ours. */
export function Refused({ error }: { error: unknown }) {
  const { title, told, mend } = wordsFor(error);
  return (
    <Plain title={title}>
      <p>{told}</p>
      <p>{mend}</p>
      <p class="quiet">
        Nothing has been guessed: cars that might not be the ones meant are better not shown.
      </p>
    </Plain>
  );
}

/** The page without a link. */
export function Empty() {
  return (
    <Plain title="No cars have been put to you yet">
      <p>
        This page shows the paint schemes that somebody is choosing from for a model car, and helps
        you to say which one you like. It needs the whole link, with everything behind the sign #.
      </p>
      <p>{again}</p>
    </Plain>
  );
}

function Plain({ title, children }: { title: string; children: ComponentChildren }) {
  return (
    <main class="round-plain">
      <span class="spoon round-blank" aria-hidden="true">
        <svg class="bowl" viewBox="0 0 104 48" aria-hidden="true" focusable="false">
          <ellipse class="bowl-shadow" cx="32" cy="42.6" rx="27" ry="4.4" />
          <path class="neck-shadow" d={neck} />
          <path class="neck" d={neck} />
          <path class="plastic" d={bowl} />
          <path class="bowl-edge" d={bowl} />
        </svg>
        <span class="handle" />
      </span>
      <h1>{title}</h1>
      {children}
      <p>
        <a href="./index.html">To the bench, where schemes are made</a>
      </p>
    </main>
  );
}

interface Words {
  readonly title: string;
  readonly told: string;
  readonly mend: ComponentChildren;
}

function wordsFor(error: unknown): Words {
  switch (error instanceof LinkError ? error.fault : 'unreadable') {
    case 'cut':
      return {
        title: 'Part of this link is missing',
        told: arrivedOf(error as LinkError),
        mend: again,
      };
    case 'altered':
      return {
        title: 'This link was changed on its way',
        told: 'Not all of its characters are the ones that were sent.',
        mend: again,
      };
    case 'newer':
      return {
        title: 'This link is newer than this page',
        told: 'It was made by a later Testspoon, whose links this page cannot read yet.',
        mend: 'Reload the page. If that does not help, open the link from the original post, which leads to a page that can read it.',
      };
    case 'none':
      return {
        title: 'There is no link of ours in this address',
        told: 'What stands behind the sign # is not something that this page makes.',
        mend: again,
      };
    default:
      return {
        title: 'This link cannot be read',
        told: 'It came whole, but what it holds is not a set of cars that this page can show.',
        mend: again,
      };
  }
}

function arrivedOf({ arrived, of }: LinkError): string {
  const whole = 'It was cut off on its way, as long links in messages sometimes are.';
  return arrived === undefined || of === undefined
    ? whole
    : `${arrived} of its ${of} characters arrived. ${whole}`;
}
