/**
 * Which alternatives did this tab leave off the stage when it last showed a build? Ids by the key of
 * the build, so that a reload shows the comparison one was looking at. Whatever cannot be read is
 * none.
 */
const placeOf = (key: string): string => `testspoon.off.${key}`;

/** Ids of the alternatives left off when the build was last shown here. */
export function offOf(key: string): readonly string[] {
  try {
    const ids: unknown = JSON.parse(sessionStorage.getItem(placeOf(key)) ?? '[]');
    return Array.isArray(ids) ? ids.filter((id) => typeof id === 'string') : [];
  } catch {
    return [];
  }
}

/** Remembers them until the tab is closed. */
export function rememberOff(key: string, off: readonly string[]): void {
  try {
    if (off.length === 0) sessionStorage.removeItem(placeOf(key));
    else sessionStorage.setItem(placeOf(key), JSON.stringify(off));
  } catch {
    // A browser that stores nothing shows every alternative again.
  }
}
