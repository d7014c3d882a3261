/**
 * Does any object of a JSON text name a field twice? Parsers take the last one without a word
 * (RFC 8259 leaves it open), so a builder would lose what the first one said. [RFC8259]
 *
 * In: text that `JSON.parse` accepts. Counting fields is one quick pass, cheap enough for every
 * file; only where a parsed value holds fewer fields than its text is the text walked by token.
 */

const quote = 34;
const backslash = 92;
const colon = 58;

/** How many fields the text writes down, over all its objects. */
export function fieldsIn(text: string): number {
  let count = 0;
  for (let at = 0; at < text.length; at++) {
    const code = text.charCodeAt(at);
    if (code === colon) count++;
    else if (code === quote) at = endOfText(text, at);
  }
  return count;
}

/** Where the text in quotation marks that begins at `start` ends. */
function endOfText(text: string, start: number): number {
  let end = text.indexOf('"', start + 1);
  while (end > 0 && isEscaped(text, end)) end = text.indexOf('"', end + 1);
  return end < 0 ? text.length : end;
}

/** Whether an odd number of backslashes stands before this place. */
function isEscaped(text: string, at: number): boolean {
  let before = at - 1;
  while (text.charCodeAt(before) === backslash) before--;
  return (at - before) % 2 === 0;
}

/** A field named for the second time within one object; lines and columns from 1. */
export interface Repeated {
  readonly name: string;
  readonly line: number;
  readonly column: number;
  /** Line of the field's first mention. */
  readonly firstLine: number;
}

const mark = /[{}[\]"]/g;
const beforeColon = /[ \t\r\n]*:/y;

/** Fields named again within their object, `most` of them, in the order of the text. */
export function repeatedFields(text: string, most: number): Repeated[] {
  /** Names seen in each object that is open, with their lines; undefined for a list. */
  const open: (Map<string, number> | undefined)[] = [];
  const found: Repeated[] = [];
  const lines = lineCounter(text);
  mark.lastIndex = 0;
  for (let met = mark.exec(text); met !== null && found.length < most; met = mark.exec(text)) {
    const at = met.index;
    if (met[0] === '{') open.push(new Map());
    else if (met[0] === '[') open.push(undefined);
    else if (met[0] === '}' || met[0] === ']') open.pop();
    else if (met[0] === '"') {
      const end = endOfText(text, at);
      mark.lastIndex = end + 1;
      const names = open.at(-1);
      beforeColon.lastIndex = end + 1;
      if (names === undefined || !beforeColon.test(text)) continue;
      const name = String(JSON.parse(text.slice(at, end + 1)));
      const { line, column } = lines(at);
      const firstLine = names.get(name);
      if (firstLine === undefined) names.set(name, line);
      else found.push({ name, line, column, firstLine });
    }
  }
  return found;
}

/** Line and column of places asked for in ascending order. */
function lineCounter(text: string): (at: number) => { line: number; column: number } {
  let line = 1;
  let lineStart = 0;
  return (at) => {
    for (let next = text.indexOf('\n', lineStart); next >= 0 && next < at; ) {
      line++;
      lineStart = next + 1;
      next = text.indexOf('\n', lineStart);
    }
    return { line, column: at - lineStart + 1 };
  };
}
