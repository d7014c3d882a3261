/**
 * Fills the screen with the stage: the browser's full screen where it has one, and the whole window
 * everywhere. What lies about the stage can meanwhile be reached by nobody.
 */
import { useEffect, useState } from 'react';
import { gridFor } from './layout.ts';

/** Cars as they mostly look, width over height, margins included. */
const carAspect = 1.75;
/** Height of the heads, CSS pixels: large where there is room, to be read in a film. */
const headOf = (width: number, height: number): number =>
  Math.max(52, Math.min(110, 0.09 * Math.min(width, height)));
/** Height of a name's letters as a share of its head's, to begin with and at least. */
const nameShare = 0.34;
const leastNameShare = 0.18;
/** After so long without a movement nothing but cars is to be seen, ms. */
const restMs = 3000;

/** Lays `count` cars out over the whole window until it is undone. */
function spread(stage: HTMLElement, count: number): () => void {
  const lay = (): void => {
    const head = headOf(innerWidth, innerHeight);
    const { columns, rows } = gridFor(count, innerWidth, innerHeight, head, carAspect);
    stage.style.setProperty('--head', `${head}px`);
    stage.style.setProperty('--fill-columns', String(columns));
    stage.style.setProperty('--fill-rows', String(rows));
    for (const name of stage.querySelectorAll<HTMLElement>('.car-head h2')) shrink(name, head);
  };
  lay();
  addEventListener('resize', lay);
  return () => {
    removeEventListener('resize', lay);
    for (const name of stage.querySelectorAll<HTMLElement>('.car-head h2')) {
      name.style.removeProperty('--name');
    }
  };
}

/** Makes a long name as small as it must be to stand beside its letter. */
function shrink(name: HTMLElement, head: number): void {
  for (let share = nameShare; share >= leastNameShare; share -= 0.02) {
    name.style.setProperty('--name', `${share * head}px`);
    if (name.scrollHeight <= name.clientHeight) return;
  }
}

/** Puts everything beside the stage out of reach, dialogs excepted. */
function setAside(stage: HTMLElement): () => void {
  const aside: HTMLElement[] = [];
  for (let inner: HTMLElement | null = stage; inner !== null; inner = inner.parentElement) {
    if (inner === document.body) break;
    for (const other of inner.parentElement?.children ?? []) {
      if (other === inner || !(other instanceof HTMLElement)) continue;
      if (other.inert || other.matches('dialog, script')) continue;
      other.inert = true;
      aside.push(other);
    }
  }
  return () => {
    for (const element of aside) element.inert = false;
  };
}

/** Tells when nothing has moved for a while. */
function watchRest(stage: HTMLElement, onRest: () => void): () => void {
  let resting: ReturnType<typeof setTimeout> | undefined;
  const stir = (): void => {
    delete stage.dataset.resting;
    clearTimeout(resting);
    resting = setTimeout(() => {
      stage.dataset.resting = '';
      onRest();
    }, restMs);
  };
  const stirs = ['pointermove', 'pointerdown', 'keydown'] as const;
  for (const name of stirs) document.addEventListener(name, stir);
  stir();
  return () => {
    clearTimeout(resting);
    delete stage.dataset.resting;
    for (const name of stirs) document.removeEventListener(name, stir);
  };
}

/** Whether the stage about `within` fills the screen, and the switch. */
export function useFilling(
  within: { readonly current: HTMLElement | null },
  count: number,
  onRest: () => void,
): readonly [boolean, (isFilling: boolean) => void] {
  const [isFilling, setFilling] = useState(false);
  useEffect(() => {
    const stage = within.current?.closest<HTMLElement>('.stage');
    if (!isFilling || !stage) return;
    const root = document.documentElement;
    stage.dataset.filling = '';
    root.dataset.filling = '';
    const undo = [spread(stage, count), setAside(stage), watchRest(stage, onRest)];
    return () => {
      delete stage.dataset.filling;
      delete root.dataset.filling;
      for (const one of undo) one();
    };
  }, [isFilling, within, count, onRest]);

  useEffect(() => {
    if (!isFilling) return;
    const onKey = ({ key }: KeyboardEvent): void => {
      if (key === 'Escape' && document.querySelector('dialog[open]') === null) leave();
    };
    const onChange = (): void => {
      if (document.fullscreenElement === null) setFilling(false);
    };
    const leave = (): void => {
      setFilling(false);
      leaveFullscreen();
    };
    document.addEventListener('keydown', onKey);
    document.addEventListener('fullscreenchange', onChange);
    return () => {
      document.removeEventListener('keydown', onKey);
      document.removeEventListener('fullscreenchange', onChange);
    };
  }, [isFilling]);

  const turn = (toFilling: boolean): void => {
    setFilling(toFilling);
    if (!toFilling) {
      leaveFullscreen();
      return;
    }
    const stage = within.current?.closest<HTMLElement>('.stage');
    // Where the browser will not, the window is filled all the same.
    if (document.fullscreenEnabled) stage?.requestFullscreen().catch(() => {});
  };
  return [isFilling, turn];
}

function leaveFullscreen(): void {
  if (document.fullscreenElement) document.exitFullscreen().catch(() => {});
}
