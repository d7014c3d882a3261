/** What channels do to a comment on its way; each as one function from text to text. */
const codeIn = /\[[^[\]]*\]$/;

const inCode =
  (change: (code: string) => string) =>
  (text: string): string =>
    text.replace(codeIn, change);

/** What leaves the viewer's words alone. */
export const around: Readonly<Record<string, (text: string) => string>> = {
  'nothing at all': (text) => text,
  'line breaks joined to spaces': (text) => text.replace(/\n/g, ' '),
  'line breaks of another system': (text) => text.replace(/\n/g, '\r\n'),
  'line breaks doubled': (text) => text.replace(/\n/g, '\n\n'),
  'the code in small letters': inCode((code) => code.toLowerCase()),
  'quoting with >': (text) => text.replace(/^/gm, '> '),
  'quoting twice': (text) => text.replace(/^/gm, '> > '),
  'a name before': (text) => `@garage_door ${text}`,
  'a name and a time above': (text) => `@garage_door\n2 days ago\n\n${text}`,
  'buttons after': (text) => `${text}\n3\nReply · Like\nShow more replies`,
  'a full stop after': (text) => `${text}.`,
  'spaces in the code': inCode((code) => code.replace(/-/g, ' - ').replace(/^\[/, '[ ')),
  'a line break in the code': inCode((code) => code.replace(/-(?=.-|.]|[PV])/, '-\n')),
  'invisible marks about': (text) => `\ufeff${text.replace(/\[/, '\u200b[\u200e')}\u200f`,
  'marked up': inCode((code) => code.replace('[', '\\[').replace(']', '\\]')),
};

/** What changes the viewer's words as it changes all else; HTML shows them as they were. */
export const through: Readonly<Record<string, (text: string) => string>> = {
  'en dashes for hyphens': (text) => text.replace(/-/g, '–'),
  'em dashes for hyphens': (text) => text.replace(/-/g, '—'),
  'unbreakable hyphens': (text) => text.replace(/-/g, '\u2011'),
  'minus signs for hyphens': (text) => text.replace(/-/g, '−'),
  'curly quotes': (text) => text.replace(/"/g, '”').replace(/'/g, '’'),
  HTML: (text) =>
    text
      .replace(/&/g, '&amp;')
      .replace(/</g, '&lt;')
      .replace(/>/g, '&gt;')
      .replace(/"/g, '&quot;')
      .replace(/'/g, '&#39;'),
  'HTML, numbered, brackets too': (text) =>
    text.replace(/[&<>"'[\]-]/g, (one) => `&#x${one.charCodeAt(0).toString(16)};`),
  decomposed: (text) => text.normalize('NFD'),
};

/** What somebody does who types the code from a screen: O for 0, I or l for 1. */
export const mistyped: Readonly<Record<string, (text: string) => string>> = {
  'O for 0': inCode((code) => code.replace(/0/g, 'O')),
  'I for 1': inCode((code) => code.replace(/1/g, 'I')),
  'l for 1, o for 0': inCode((code) => code.replace(/1/g, 'l').replace(/0/g, 'o')),
  '0 for O in the mark': inCode((code) => code.replace(/O/g, '0')),
};
