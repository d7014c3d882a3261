/**
 * Where do the files of this page stand, so that a link leads there, and who can get there?
 *
 * In: the page's own address, or one that was typed. Out: the address of a folder, with its slash at
 * the end, and who can open it. Names and numbers of this machine as in [RFC6761] and [RFC1122], of
 * a network at home or in a club as in [RFC1918] and [RFC6762].
 */

/** Who can open an address: anyone, whoever is in the same network, nobody but this machine. */
export type Reach = 'anyone' | 'network' | 'machine';

/** The folder a page stands in; `https://a.example/cars/index.html#x` gives `https://a.example/cars/`. */
export function folderOf(address: string): string {
  const { protocol, host, pathname } = new URL('.', address);
  return `${protocol}//${host}${pathname}`;
}

/** Who can open this address. */
export function reachOf(address: string): Reach {
  const { protocol, hostname } = new URL(address);
  if (protocol !== 'http:' && protocol !== 'https:') return 'machine';
  const isOwn = /^(localhost|.*\.localhost|127(\.\d+){3}|0\.0\.0\.0|\[::1?\])$/.test(hostname);
  if (isOwn) return 'machine';
  const isNear =
    /^(10(\.\d+){3}|192\.168(\.\d+){2}|172\.(1[6-9]|2\d|3[01])(\.\d+){2})$/.test(hostname) ||
    hostname.endsWith('.local');
  return isNear ? 'network' : 'anyone';
}

/** What was typed, as an address of a folder; or what is wrong with it, to stand behind “Not yet:”. */
export type Typed = { readonly base: string } | { readonly fault: string };

/** Reads what was typed or pasted: a folder, or the address of one of its pages. */
export function baseFrom(typed: string): Typed {
  const text = typed.trim();
  const whole = /^[a-z][a-z0-9+.-]*:\/\//i.test(text) ? text : `https://${text}`;
  if (/\s/.test(text) || !URL.canParse(whole)) {
    return { fault: 'an address looks like https://cars.example/testspoon/.' };
  }
  const url = new URL(whole);
  if (url.protocol !== 'http:' && url.protocol !== 'https:') {
    return { fault: 'an address that others can open begins with https:// or http://.' };
  }
  if (url.username !== '' || url.password !== '') {
    return { fault: 'it holds a name or password, which everyone would read.' };
  }
  const isPage = /\.html?$/i.test(url.pathname);
  if (!isPage && !url.pathname.endsWith('/')) url.pathname += '/';
  return { base: folderOf(url.href) };
}

const key = 'testspoon.address';

/** The address typed on an earlier visit; nothing where there is none. */
export function keptBase(): string | undefined {
  try {
    const kept = localStorage.getItem(key) ?? '';
    const read = baseFrom(kept);
    return kept !== '' && 'base' in read ? read.base : undefined;
  } catch {
    return undefined;
  }
}

/** Keeps an address for the next visit, or forgets it. */
export function keepBase(base: string | undefined): void {
  try {
    if (base === undefined) localStorage.removeItem(key);
    else localStorage.setItem(key, base);
  } catch {
    // A browser that keeps nothing asks again.
  }
}
