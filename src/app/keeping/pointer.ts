/**
 * Which build does this tab open with? Its key, remembered for the tab and for the browser; the
 * tab's own comes first, so that two tabs that are opened again show what each had. The demo has no
 * key and is remembered as nothing at all.
 */
const place = 'testspoon.open';

/** Key of the build that was open last; undefined where it was the demo, or nothing yet. */
export function lastOpen(): string | undefined {
  try {
    const key = sessionStorage.getItem(place) ?? localStorage.getItem(place);
    return key === null || key === '' ? undefined : key;
  } catch {
    return undefined;
  }
}

/** Remembers what is open; undefined for the demo. */
export function rememberOpen(key: string | undefined): void {
  try {
    sessionStorage.setItem(place, key ?? '');
    localStorage.setItem(place, key ?? '');
  } catch {
    // A browser that stores nothing opens with the demo.
  }
}
