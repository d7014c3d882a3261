/**
 * What one source file imports and which names it touches, read from its syntax tree, so that
 * comments and strings never count. Static, type-only, dynamic and re-exporting imports, import
 * types and `import.meta.glob` are all imports.
 */
import { posix } from 'node:path';
import { parseSync, Visitor } from 'vite';

export interface Source {
  /** Path from the repository root, with forward slashes. */
  readonly path: string;
  readonly text: string;
}

export interface Module extends Source {
  /** As written; relative ones resolved to a path from the repository root. */
  readonly imports: readonly string[];
  /** Globals and calls that make a result depend on more than its input. */
  readonly impurities: readonly string[];
  /** Lines that use the type `any`. */
  readonly anyLines: readonly number[];
}

const impureGlobals = new Set([
  'document',
  'window',
  'navigator',
  'localStorage',
  'sessionStorage',
  'indexedDB',
  'fetch',
  'XMLHttpRequest',
  'WebSocket',
  'process',
  'performance',
  'setTimeout',
  'setInterval',
  'queueMicrotask',
  'crypto',
  'globalThis',
  'self',
]);
const impureMembers = new Set(['Date.now', 'Math.random']);

/** The module in `source`. Throws where the file is not valid TypeScript. */
export function moduleFrom(source: Source): Module {
  const { program, errors } = parseSync(source.path, source.text);
  if (errors.length > 0) throw new Error(`${source.path}: ${errors[0]?.message}`);
  const imports: string[] = [];
  const impurities: string[] = [];
  const anyLines: number[] = [];
  const declared = new Set<string>();
  const seen: { name: string; start: number }[] = [];
  const lineOf = (start: number): number => source.text.slice(0, start).split('\n').length;
  const addImport = (node: unknown): void => {
    for (const text of textsOf(node)) imports.push(resolved(source.path, text));
  };
  const addPlain = (name: string, start: number): void => {
    seen.push({ name, start });
  };

  new Visitor({
    ImportDeclaration: (node) => addImport(node.source),
    ExportAllDeclaration: (node) => addImport(node.source),
    ExportNamedDeclaration: (node) => addImport(node.source),
    ImportExpression: (node) => addImport(node.source),
    TSImportType: (node) => addImport(node.source),
    TSAnyKeyword: (node) => {
      anyLines.push(lineOf(node.start));
    },
    VariableDeclarator: (node) => {
      if (node.id.type === 'Identifier') declared.add(node.id.name);
    },
    CallExpression: (node) => {
      const { callee } = node;
      if (callee.type === 'Identifier') addPlain(callee.name, callee.start);
      if (
        callee.type === 'MemberExpression' &&
        callee.object.type === 'MetaProperty' &&
        callee.property.type === 'Identifier' &&
        callee.property.name === 'glob'
      ) {
        addImport(node.arguments[0]);
      }
      if (callee.type === 'Identifier' && callee.name === 'Date') impurities.push('Date()');
    },
    NewExpression: (node) => {
      const { callee } = node;
      if (callee.type !== 'Identifier') return;
      if (callee.name === 'Date' && node.arguments.length === 0) impurities.push('new Date()');
      addPlain(callee.name, callee.start);
    },
    MemberExpression: (node) => {
      if (node.object.type !== 'Identifier') return;
      addPlain(node.object.name, node.object.start);
      if (node.property.type !== 'Identifier') return;
      const name = `${node.object.name}.${node.property.name}`;
      if (impureMembers.has(name)) impurities.push(name);
    },
  }).visit(program);

  const globals = seen.filter(({ name }) => impureGlobals.has(name) && !declared.has(name));
  impurities.push(...globals.map(({ name }) => name));
  return { ...source, imports, impurities: [...new Set(impurities)], anyLines };
}

/** String literals under a node: one import target, or the list given to a glob. */
function textsOf(node: unknown): string[] {
  if (typeof node !== 'object' || node === null) return [];
  const { type, value, elements } = node as { type?: string; value?: unknown; elements?: unknown };
  if (type === 'Literal' && typeof value === 'string') return [value];
  return type === 'ArrayExpression' && Array.isArray(elements) ? elements.flatMap(textsOf) : [];
}

const resolved = (from: string, target: string): string =>
  target.startsWith('.')
    ? posix.normalize(posix.join(posix.dirname(from), target.replace(/\?.*$/, '')))
    : target;
