/**
 * Is my work still there tomorrow? The open build is kept in this browser after every change and
 * found again on the next visit. A browser that refuses storage (private window, full quota) costs
 * the builder nothing but the keeping, and is told so once.
 */
import type { Build } from '../../build/build.ts';

const key = 'testspoon.build';
/** Work that could no longer be opened is put under the first of these that is free. */
const asideKeys = Array.from({ length: 9 }, (_, k) => `testspoon.unreadable${k === 0 ? '' : k}`);

/** The text kept on the last visit; undefined where there is none or storage is refused. */
export function keptText(): string | undefined {
  try {
    return localStorage.getItem(key) ?? undefined;
  } catch {
    return undefined;
  }
}

/** Keeps the build; whether that worked. */
export function keep(build: Build): boolean {
  try {
    localStorage.setItem(key, JSON.stringify(build));
    return true;
  } catch {
    return false;
  }
}

/**
 * Sets work aside that cannot be opened, so that it is neither lost nor in the way; whether that
 * worked. Where it did not, the text stays where it was and nothing may be kept over it.
 */
export function setAside(text: string): boolean {
  try {
    const free = asideKeys.find((one) => localStorage.getItem(one) === null);
    if (free === undefined) return false;
    // Removed first: storage that is full has room for the text only once.
    localStorage.removeItem(key);
    try {
      localStorage.setItem(free, text);
      return true;
    } catch {
      localStorage.setItem(key, text);
      return false;
    }
  } catch {
    return false;
  }
}
