/**
 * Holding the letter of an alternative anywhere on the page shows that alternative in every place.
 * Not while something is typed or a dialog is open, nor with ctrl, alt or ⌘, which belong to the
 * browser; ends with the key, and when the page loses sight of it.
 */
import { useEffect } from 'react';
import { letterOf } from '../../../build/build.ts';
import { standDown, standIn, useViewing } from '../../live/viewing.ts';
import { useBench } from '../../store.ts';

const isBusy = (target: EventTarget | null): boolean =>
  document.querySelector('dialog[open]') !== null ||
  (target instanceof HTMLElement &&
    (target.isContentEditable ||
      target.matches('textarea, select, input:not([type="radio"], [type="checkbox"])')));

/** Id of the alternative whose letter this is. */
function alternativeOf(letter: string): string | undefined {
  const alternatives = useBench.getState().work?.build.alternatives ?? [];
  return alternatives.find((_, at) => letterOf(at) === letter.toUpperCase())?.id;
}

/** Listens for letters while `isOn`. */
export function useLetterKeys(isOn: boolean): void {
  useEffect(() => {
    if (!isOn) return;
    let held: string | undefined;
    const release = (): void => {
      if (held === undefined) return;
      held = undefined;
      if (useViewing.getState().standIn?.at === undefined) standDown();
    };
    const onDown = (event: KeyboardEvent): void => {
      if (event.ctrlKey || event.altKey || event.metaKey) release();
      else if (!event.repeat && !isBusy(event.target)) hold(event);
    };
    const hold = ({ key, code }: KeyboardEvent): void => {
      const shown = alternativeOf(key);
      if (shown === undefined) return;
      held = code;
      standIn(shown);
    };
    const onUp = ({ code }: KeyboardEvent): void => {
      if (code === held) release();
    };
    const listening = new AbortController();
    const { signal } = listening;
    document.addEventListener('keydown', onDown, { signal });
    document.addEventListener('keyup', onUp, { signal });
    document.addEventListener('visibilitychange', release, { signal });
    window.addEventListener('blur', release, { signal });
    return () => {
      listening.abort();
      release();
    };
  }, [isOn]);
}
