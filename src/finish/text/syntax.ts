/**
 * Where exactly does a JSON text stop being JSON? Engines word this differently and often leave
 * the place out, so the text is walked once more, token by token, only after parsing has failed.
 *
 * In: text that `JSON.parse` refused. Out: line and column, both from 1, of the first token that
 * cannot stand where it stands. Grammar: RFC 8259 (from memory). [RFC8259]
 */
const token =
  /[ \t\r\n]+|[{}[\],:]|"[^"\\\p{Cc}]*(?:\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4})[^"\\\p{Cc}]*)*"|-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?|true|false|null/uy;

type Wanted =
  | 'value'
  | 'value or ]'
  | 'a field name'
  | 'a field name or }'
  | ':'
  | ', or ]'
  | ', or }'
  | 'the end';

/** Line and column of the first fault, what stands there and what could have stood there. */
export interface SyntaxFault {
  readonly line: number;
  readonly column: number;
  readonly found: string;
  readonly wanted: Wanted;
}

/** The first place where `text` breaks the grammar of JSON; undefined where it does not. */
export function syntaxFaultOf(text: string): SyntaxFault | undefined {
  const open: ('{' | '[')[] = [];
  let wanted: Wanted = 'value';
  token.lastIndex = 0;
  while (true) {
    const at = token.lastIndex;
    const found = token.exec(text)?.[0];
    if (found === undefined) {
      if (at === text.length && wanted === 'the end') return undefined;
      return faultAt(text, at, wanted);
    }
    if (/^[ \t\r\n]/.test(found)) continue;
    const next = after(found, wanted, open);
    if (next === undefined) return faultAt(text, at, wanted);
    wanted = next;
  }
}

/** What may follow `found` where `wanted` was due; undefined where `found` may not stand there. */
function after(found: string, wanted: Wanted, open: ('{' | '[')[]): Wanted | undefined {
  const closing = (): Wanted => {
    open.pop();
    return afterValue(open);
  };
  switch (wanted) {
    case 'value':
    case 'value or ]':
      if (found === ']' && wanted === 'value or ]') return closing();
      if (found === '{' || found === '[') {
        open.push(found);
        return found === '{' ? 'a field name or }' : 'value or ]';
      }
      return /^[}\],:]/.test(found) ? undefined : afterValue(open);
    case 'a field name':
    case 'a field name or }':
      if (found === '}' && wanted === 'a field name or }') return closing();
      return found.startsWith('"') ? ':' : undefined;
    case ':':
      return found === ':' ? 'value' : undefined;
    case ', or ]':
      return found === ']' ? closing() : found === ',' ? 'value' : undefined;
    case ', or }':
      return found === '}' ? closing() : found === ',' ? 'a field name' : undefined;
    case 'the end':
      return undefined;
  }
}

const afterValue = (open: readonly ('{' | '[')[]): Wanted => {
  const inside = open.at(-1);
  return inside === undefined ? 'the end' : inside === '{' ? ', or }' : ', or ]';
};

function faultAt(text: string, at: number, wanted: Wanted): SyntaxFault {
  const before = text.slice(0, at);
  const lineStart = before.lastIndexOf('\n') + 1;
  return {
    line: before.split('\n').length,
    column: at - lineStart + 1,
    found: text.slice(at, at + 20),
    wanted,
  };
}
