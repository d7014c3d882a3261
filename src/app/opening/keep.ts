/**
 * Work that an earlier Testspoon has kept in the browser's small store. It is taken over into the
 * present one; text that cannot even be read as a build is set aside, never deleted.
 */
const key = 'testspoon.build';
/** Text that could not be read is put under the first of these that is free. */
const asideKeys = Array.from({ length: 9 }, (_, k) => `testspoon.unreadable${k === 0 ? '' : k}`);

/** The text an earlier Testspoon has kept; undefined where there is none or storage is refused. */
export function earlierText(): string | undefined {
  try {
    return localStorage.getItem(key) ?? undefined;
  } catch {
    return undefined;
  }
}

/** The text has been taken over; one that another tab has put there meanwhile stays. */
export function forgetEarlier(text: string): void {
  if (earlierText() === text) localStorage.removeItem(key);
}

/**
 * Sets text aside that cannot be read, so that it is neither lost nor in the way; whether that
 * worked. Where it did not, the text stays where it was.
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
