/** Which commands were used lately? Ids, newest first, kept in this browser where it keeps things. */

const key = 'testspoon.commands';
const most = 8;

/** Ids of commands used lately; none where the browser keeps nothing. */
export function recentCommands(): readonly string[] {
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(key) ?? '[]');
    return Array.isArray(kept) ? kept.filter((id) => typeof id === 'string').slice(0, most) : [];
  } catch {
    return [];
  }
}

/** Remembers that a command was used. */
export function remember(id: string): void {
  const ids = [id, ...recentCommands().filter((one) => one !== id)].slice(0, most);
  try {
    localStorage.setItem(key, JSON.stringify(ids));
  } catch {
    // A browser that keeps nothing forgets this too.
  }
}
