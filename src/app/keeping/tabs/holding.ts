/**
 * Is this build open in another tab too? The tab that opened it first holds it; one that comes
 * later is second until the first lets go, by closing or crashing too. Locks of the browser tell,
 * and where there are none (pages served without encryption) the tabs ask each other.
 */
import { hearTabs, type News, tellTabs } from './channel.ts';

export interface Hold {
  /** Whether this tab holds the build; waits until that is known. */
  readonly isFirst: () => Promise<boolean>;
  /** Whether this tab is known to be second now. */
  readonly isSecond: () => boolean;
  readonly release: () => void;
}

/** A tab that was first would have answered by now, ms. */
const answerMs = 200;
const tab = Math.random().toString(36).slice(2);

/** Takes hold of a build; `onChange` is called whenever this tab has become first or second. */
export function holdBuild(key: string, onChange: (isFirst: boolean) => void): Hold {
  let standing: 'asking' | 'first' | 'second' = 'asking';
  let settle: (() => void) | undefined;
  const settled = new Promise<void>((done) => {
    settle = done;
  });
  const become = (next: 'first' | 'second'): void => {
    if (standing === next) return;
    standing = next;
    settle?.();
    onChange(next === 'first');
  };
  const hasLocks = typeof navigator.locks?.request === 'function';
  const release = (hasLocks ? heldByLock : heldByWord)(key, become);
  return {
    isFirst: async () => {
      await settled;
      return standing === 'first';
    },
    isSecond: () => standing === 'second',
    release: () => {
      release();
      settle?.();
    },
  };
}

/** Locks go with the tab that has them, however it ends. */
function heldByLock(key: string, become: (next: 'first' | 'second') => void): () => void {
  const name = lockOf(key);
  const leaving = new AbortController();
  let letGo: (() => void) | undefined;
  const held = new Promise<void>((done) => {
    letGo = done;
  });
  const take = async (lock: Lock | null): Promise<void> => {
    if (leaving.signal.aborted) return;
    if (lock !== null) {
      become('first');
      await held;
      return;
    }
    become('second');
    // Waits in line; put away, or a browser that is closing, is no fault.
    navigator.locks.request(name, { signal: leaving.signal }, take).catch(() => {});
  };
  navigator.locks.request(name, { ifAvailable: true }, take).catch(() => become('first'));
  return () => {
    leaving.abort();
    letGo?.();
  };
}

const lockPrefix = 'testspoon.build.';
const lockOf = (key: string): string => `${lockPrefix}${key}`;

/** Keys of all builds that are open in some tab, this one too; none where the browser cannot say. */
export async function heldKeys(): Promise<ReadonlySet<string>> {
  const held = (await navigator.locks?.query?.())?.held ?? [];
  return new Set(held.map(({ name = '' }) => name.slice(lockPrefix.length)));
}

/** Whoever is asked and was first says so; of two that ask at once, the lower name is first. */
function heldByWord(key: string, become: (next: 'first' | 'second') => void): () => void {
  let isAsking = false;
  let isFirst = false;
  let waiting: ReturnType<typeof setTimeout> | undefined;
  const ask = (): void => {
    isAsking = true;
    tellTabs({ kind: 'who', key, from: tab });
    clearTimeout(waiting);
    waiting = setTimeout(() => {
      isAsking = false;
      isFirst = true;
      become('first');
    }, answerMs);
  };
  const yieldTo = (): void => {
    clearTimeout(waiting);
    isAsking = false;
    isFirst = false;
    become('second');
  };
  const onNews = (news: News): void => {
    if (!('key' in news) || news.key !== key) return;
    if (news.kind === 'who') {
      if (isFirst || (isAsking && tab < news.from)) {
        tellTabs({ kind: 'mine', key, to: news.from });
      } else if (isAsking) yieldTo();
    } else if (news.kind === 'mine' && news.to === tab) yieldTo();
    else if (news.kind === 'free' && !isFirst) ask();
  };
  const leave = (): void => {
    if (isFirst) tellTabs({ kind: 'free', key });
  };
  const back = ({ persisted }: PageTransitionEvent): void => {
    if (!persisted) return;
    isFirst = false;
    ask();
  };
  const deaf = hearTabs(onNews);
  addEventListener('pagehide', leave);
  addEventListener('pageshow', back);
  ask();
  return () => {
    clearTimeout(waiting);
    leave();
    deaf();
    removeEventListener('pagehide', leave);
    removeEventListener('pageshow', back);
  };
}
