/**
 * What is said where the browser keeps nothing, and what to do about it. Said once; whoever has
 * read it works on in peace, and it is said again only if it happens again.
 */

import { type Notice, say, unsay, useStatus } from './status.ts';
import { refusalOf } from './store/database.ts';

type Kind = 'build' | 'racks';

const notices: Readonly<Record<ReturnType<typeof refusalOf>, Omit<Notice, 'id'>>> = {
  full: {
    text:
      'The storage of this browser is full, so your last changes are not kept. Save a file, or ' +
      'delete builds that you no longer need; keeping goes on by itself once there is room.',
    remedies: ['save', 'builds'],
  },
  closed: {
    text:
      'This browser keeps nothing between visits, as in a private window or with storage ' +
      'switched off. Save a file before you leave.',
    remedies: ['save'],
  },
  newer: {
    text:
      'A newer Testspoon keeps the builds of this browser; this one leaves them untouched and ' +
      'keeps nothing. Reload the page for the newer one, or save a file before you leave.',
    remedies: ['save'],
  },
};
const id = 'trouble';
/** What is refused now. */
const refused = new Set<Kind>();

/** Keeping was refused. */
export function refuse(kind: Kind, error: unknown): void {
  refused.add(kind);
  if (kind === 'build') useStatus.setState({ state: 'unkept' });
  say({ id, ...notices[refusalOf(error)] });
}

/** The same in words, for where it happens. */
export const refusalText = (error: unknown): string => notices[refusalOf(error)].text;

/** Keeping works again. */
export function recover(kind: Kind): void {
  refused.delete(kind);
  if (refused.size === 0) unsay(id);
}
