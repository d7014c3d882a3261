/**
 * Which day is it at the bench? What must be bought and cured is counted from today, and a page may
 * stay open for days: whoever asks is asked again once another day has begun. ISO date, by the
 * builder's own calendar.
 */
import { useSyncExternalStore } from 'react';

/** Today as the builder's calendar says, ISO date. */
export function todayHere(now = new Date()): string {
  const two = (value: number): string => String(value).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

/** Milliseconds from `now` until the next day begins, and a moment more. */
export const untilTomorrow = (now: Date): number =>
  new Date(now.getFullYear(), now.getMonth(), now.getDate() + 1).getTime() - now.getTime() + 500;

/** Today; asked again at midnight and whenever the page is come back to. */
export const useToday = (): string => useSyncExternalStore(onAnotherDay, todayHere);

function onAnotherDay(tell: () => void): () => void {
  const listening = new AbortController();
  const { signal } = listening;
  let midnight: ReturnType<typeof setTimeout>;
  const wait = (): void => {
    midnight = setTimeout(() => {
      tell();
      wait();
    }, untilTomorrow(new Date()));
  };
  wait();
  // Timers stand still while a machine sleeps.
  document.addEventListener('visibilitychange', tell, { signal });
  window.addEventListener('focus', tell, { signal });
  return () => {
    clearTimeout(midnight);
    listening.abort();
  };
}
