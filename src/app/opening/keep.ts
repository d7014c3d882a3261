/**
 * Is my work still there tomorrow? The open build is kept in this browser after every change and
 * found again on the next visit. A browser that refuses storage (private window, full quota) costs
 * the builder nothing but the keeping, and is told so once.
 */
import type { Build } from '../../build/build.ts';

const key = 'testspoon.build';
/** Work that could no longer be read is put here rather than thrown away. */
const unreadableKey = 'testspoon.unreadable';

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

/** Sets work aside that cannot be read by this version, so that it is neither lost nor in the way. */
export function setAside(text: string): void {
  try {
    localStorage.setItem(unreadableKey, text);
    localStorage.removeItem(key);
  } catch {
    // Storage is refused: nothing was kept, so nothing can be in the way.
  }
}
