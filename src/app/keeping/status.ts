/**
 * What does the builder need to know about keeping? Whether the open work is kept, and whatever has
 * to be said in a line of its own. Small and fetched with the page; what does the keeping comes
 * later.
 */
import { create } from 'zustand';
import type { Work } from '../store.ts';

/** `none`: nothing of one's own to keep yet. */
export type KeptState = 'none' | 'keeping' | 'kept' | 'unkept';
/** What can be done about a notice, as buttons in its line. */
export type Remedy = 'save' | 'builds' | 'unreadable-racks';

export interface Notice {
  /** One notice of an id at a time. */
  readonly id: string;
  readonly text: string;
  readonly remedies?: readonly Remedy[];
}
interface Status {
  readonly state: KeptState;
  readonly notices: readonly Notice[];
  /**
   * The work that was drawn last. Only what the page could draw is kept, so that work it cannot
   * draw never replaces work it can.
   */
  readonly drawn: Work | undefined;
}

export const useStatus = create<Status>()(() => ({
  state: 'none',
  notices: [],
  drawn: undefined,
}));

/** Notices that were put away; they stay so until what they tell of has passed. */
const putAway = new Set<string>();

/** Says something once, in the place of a notice with the same id. */
export function say(notice: Notice): void {
  if (putAway.has(notice.id)) return;
  useStatus.setState(({ notices }) =>
    notices.some(({ id, text }) => id === notice.id && text === notice.text)
      ? {}
      : { notices: [...notices.filter(({ id }) => id !== notice.id), notice] },
  );
}

const without = (gone: string): void =>
  useStatus.setState(({ notices }) =>
    notices.some(({ id }) => id === gone)
      ? { notices: notices.filter(({ id }) => id !== gone) }
      : {},
  );

/** What the notice told of has passed. */
export function unsay(id: string): void {
  putAway.delete(id);
  without(id);
}

/** The builder has read it. */
export function putNoticeAway(id: string): void {
  putAway.add(id);
  without(id);
}
