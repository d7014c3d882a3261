/**
 * What do tabs tell each other? Which build one of them has open, and what has been kept since. A
 * browser without such a channel loses nothing but the news: revisions guard every change.
 */
export type News =
  /** A build was kept. */
  | { readonly kind: 'kept'; readonly key: string; readonly revision: number }
  /** A build was deleted. */
  | { readonly kind: 'removed'; readonly key: string }
  | { readonly kind: 'racks' }
  /** Who has this build open? */
  | { readonly kind: 'who'; readonly key: string; readonly from: string }
  /** One of us has, and was first. */
  | { readonly kind: 'mine'; readonly key: string; readonly to: string }
  /** It is open here no longer. */
  | { readonly kind: 'free'; readonly key: string };

const channel =
  typeof BroadcastChannel === 'undefined' ? undefined : new BroadcastChannel('testspoon');
const listeners = new Set<(news: News) => void>();
channel?.addEventListener('message', ({ data }: MessageEvent<News>) => {
  for (const listener of [...listeners]) listener(data);
});

/** Tells the other tabs. */
export const tellTabs = (news: News): void => channel?.postMessage(news);

/** Hears what other tabs tell; the answer ends it. */
export function hearTabs(listener: (news: News) => void): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}
