/**
 * What exactly is wrong with a file, and how is it mended? The one door through which racks and
 * builds come in: bounded text, JSON, harmless strings, then the schema, every fault told as a
 * `Problem` in the builder's terms.
 *
 * Limits (our judgement, wide of any real build): 64 MB of text, 40 levels, 20,000 entries in a
 * list. Text with control or direction-changing characters is refused, never quietly changed,
 * because stripping could make two names the same; line breaks and tabs are allowed.
 */
import * as v from 'valibot';
import { InputError, type Problem, shown } from '../ground/problem.ts';
import { fieldsIn, repeatedFields } from './text/repeated.ts';
import { syntaxFaultOf } from './text/syntax.ts';

/** Text longer than this many bytes is refused before it is parsed. */
export const mostBytes = 64_000_000;
export const mostEntries = 20_000;
const mostLevels = 40;
/** Above this many values a faulty file reports its first fault only, to bound time and memory. */
const mostValuesListed = 500_000;
/** Hidden characters are reported at most this often. */
const mostHidden = 100;
/** Fields named twice are reported at most this often. */
const mostRepeated = 50;

const hidden =
  /(?![\t\n\r])[\p{Cc}\p{Cs}\u061c\u200e\u200f\u2028\u2029\u202a-\u202e\u2066-\u2069\ufeff]/u;

/** Whether text holds control, direction-changing or broken characters; line ends and tabs pass. */
export const hasHidden = (text: string): boolean => hidden.test(text);

/** The text without them; only for what nobody typed as it is, such as the name of a file. */
export const withoutHidden = (text: string): string =>
  hasHidden(text) ? text.replace(new RegExp(hidden, 'gu'), '') : text;

/** Throws `InputError` where `text` holds more than `maxBytes` bytes of UTF-8. */
export function refuseOversize(text: string, source: string, maxBytes = mostBytes): void {
  const bytes =
    text.length > maxBytes || text.length * 3 <= maxBytes ? text.length : utf8Bytes(text);
  if (bytes <= maxBytes) return;
  throw new InputError(
    [
      {
        place: '',
        found: `at least ${(bytes / 1e6).toFixed(0)} MB of text`,
        expected: `no more than ${(maxBytes / 1e6).toFixed(0)} MB`,
        mend: 'Split it into several files.',
      },
    ],
    source,
  );
}

const utf8Bytes = (text: string): number => new TextEncoder().encode(text).length;

/**
 * Any JSON value from text. Throws `InputError` on too much text, broken JSON (with line and
 * column), nesting over 40 levels, lists over 20,000 entries, hidden characters, and fields named
 * twice in one object (with line and column), of which the parser would keep the last.
 */
export function parseJson(text: string, source: string, maxBytes = mostBytes): unknown {
  refuseOversize(text, source, maxBytes);
  const json = text.startsWith('\ufeff') ? text.slice(1) : text;
  const value = jsonFrom(json, source);
  const problems: Problem[] = [];
  const held = { fields: 0 };
  countChecked(value, [], problems, held);
  if (problems.length === 0 && fieldsIn(json) > held.fields) problems.push(...repeatedIn(json));
  if (problems.length > 0) throw new InputError(problems, source);
  return value;
}

/**
 * `value` as the schema's output. Throws `InputError` with every fault, or with the first one
 * only where the value holds more than half a million entries.
 */
export function checkedAgainst<Schema extends v.GenericSchema>(
  schema: Schema,
  value: unknown,
  source: string,
): v.InferOutput<Schema> {
  const quick = v.safeParse(schema, value, { abortEarly: true });
  if (quick.success) return quick.output;
  const isListable = countChecked(value, [], []) <= mostValuesListed;
  const full = isListable ? v.safeParse(schema, value) : quick;
  throw new InputError(problemsFrom(full.issues ?? quick.issues), source);
}

/** Schema issues as problems; `place` is put before each path. Unions tell of the nearest form. */
export function problemsFrom(issues: readonly v.BaseIssue<unknown>[], place = ''): Problem[] {
  return issues.flatMap((issue) => {
    const near = (issue.issues ?? []).filter(
      (inner) =>
        inner.expected !== 'never' &&
        (inner.path === undefined || isPresent(issue.input, inner.path[0]?.key)),
    );
    if (near.length > 0 && issue.type === 'union') {
      return problemsFrom(near, placeOf(issue.path ?? [], place));
    }
    return [problemFrom(issue, place)];
  });
}

const isPresent = (input: unknown, key: unknown): boolean =>
  typeof input === 'object' &&
  input !== null &&
  typeof key === 'string' &&
  Object.hasOwn(input, key);

function problemFrom(issue: v.BaseIssue<unknown>, place: string): Problem {
  const path = issue.path ?? [];
  const isUnknownField = issue.expected === 'never' && issue.type.endsWith('object');
  if (isUnknownField) {
    return {
      place: placeOf(path.slice(0, -1), place),
      found: `a field ${shown(issue.input)}`,
      expected: 'only the fields its schema names',
      mend: 'Correct the spelling of its name, or take it out.',
    };
  }
  const expected = expectedBy(issue);
  const isMissing = issue.received === 'undefined';
  return {
    place: placeOf(path, place),
    found: isMissing ? 'nothing' : foundBy(issue),
    expected,
    mend: isMissing ? 'Add it.' : mendOf(issue),
  };
}

const foundBy = (issue: v.BaseIssue<unknown>): string =>
  issue.type === 'max_length' && typeof issue.input === 'string'
    ? `${issue.input.length} characters`
    : shown(issue.input);

function mendOf(issue: v.BaseIssue<unknown>): string {
  if (issue.type === 'max_length') return 'Shorten it.';
  if (issue.type === 'number' && typeof issue.input === 'string') {
    return 'Write the number without quotation marks.';
  }
  return 'Correct it and read the file again.';
}

function expectedBy(issue: v.BaseIssue<unknown>): string {
  const bound = String(issue.requirement);
  const unit = typeof issue.input === 'string' ? 'characters' : 'entries';
  switch (issue.type) {
    case 'min_value':
      return `at least ${bound}`;
    case 'max_value':
      return `at most ${bound}`;
    case 'min_length':
      return `at least ${bound} ${unit}`;
    case 'max_length':
      return `at most ${bound} ${unit}`;
    case 'integer':
      return 'a whole number';
    case 'finite':
    case 'number':
      return 'a number';
    case 'string':
      return 'text in quotation marks';
    case 'array':
    case 'tuple':
      return 'a list';
    case 'boolean':
      return 'true or false';
    case 'iso_date':
      return 'a date like 2031-05-24';
    case 'picklist':
    case 'literal':
    case 'variant':
      return choicesFrom(issue.expected);
    case 'union':
      return formsFrom(issue);
    case 'regex':
      return issue.message.startsWith('Invalid ') ? `text like ${issue.expected}` : issue.message;
    case 'strict_object':
    case 'object':
    case 'record':
      return issue.received === 'undefined' ? 'a value here' : 'an object with named fields';
    default:
      return issue.expected ?? issue.message;
  }
}

/** `("a" | "b")` as `one of a, b`. */
const choicesFrom = (expected: string | null): string => {
  const choices = (expected ?? '').replace(/[()"]/g, '').split(' | ');
  return choices.length > 1 ? `one of ${choices.join(', ')}` : choices.join('');
};

/** The fields by which the forms of a union are told apart. */
const formsFrom = (issue: v.BaseIssue<unknown>): string => {
  const keys = (issue.issues ?? [])
    .filter((inner) => inner.expected?.startsWith('"') ?? false)
    .map((inner) => (inner.expected ?? '').replaceAll('"', ''));
  const forms = [...new Set(keys)];
  return forms.length > 0 ? `exactly one of the fields ${forms.join(', ')}` : 'another form';
};

type PathStep = { readonly key: unknown; readonly value?: unknown };

/** `parts › belts › candidates › 2`: list entries by their id where they have one, else from 1. */
function placeOf(path: readonly PathStep[], before: string): string {
  const steps = path.map(({ key, value }) =>
    typeof key === 'number' ? entryName(key, value) : key,
  );
  return [before, ...steps.map(stepName)].filter((step) => step !== '').join(' › ');
}

const entryName = (position: number, value: unknown): string => {
  const id = (value as { id?: unknown } | null | undefined)?.id;
  return typeof id === 'string' && /^[a-z0-9-]{1,60}$/.test(id) ? id : String(position + 1);
};
const stepName = (step: unknown): string => {
  const name = String(step);
  return /^[\w$. /-]{0,60}$/.test(name) ? name : shown(name);
};

function jsonFrom(text: string, source: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    throw new InputError([syntaxProblem(text)], source);
  }
}

function syntaxProblem(text: string): Problem {
  const fault = syntaxFaultOf(text);
  if (text.trim() === '' || fault === undefined) {
    return {
      place: '',
      found: 'no JSON',
      expected: 'a JSON document',
      mend: 'Check that this is the file you meant.',
    };
  }
  return {
    place: `line ${fault.line}, column ${fault.column}`,
    found: fault.found === '' ? 'the end of the text' : shown(fault.found),
    expected: fault.wanted,
    mend: 'The text is not complete JSON; a comma, bracket or quotation mark is often at fault.',
  };
}

const repeatedIn = (json: string): Problem[] =>
  repeatedFields(json, mostRepeated).map(({ name, line, column, firstLine }) => ({
    place: `line ${line}, column ${column}`,
    found: `the field ${shown(name)} again, first in line ${firstLine}`,
    expected: 'each field once in its object',
    mend: 'Take one of the two out; only the last would have counted.',
  }));

/**
 * Number of values inside `value`; adds a problem for each breach of the limits above, and the
 * fields of all its objects to `held`.
 */
function countChecked(
  value: unknown,
  path: PathStep[],
  problems: Problem[],
  held = { fields: 0 },
): number {
  if (typeof value === 'string') refuseHidden(value, path, problems);
  if (typeof value !== 'object' || value === null) return 1;
  if (path.length >= mostLevels) {
    problems.push({
      place: placeOf(path.slice(0, 6), ''),
      found: `more than ${mostLevels} levels`,
      expected: `at most ${mostLevels}`,
      mend: 'No file of ours nests so deep; check that this is the file you meant.',
    });
    return 1;
  }
  if (Array.isArray(value) && value.length > mostEntries) {
    problems.push({
      place: placeOf(path, ''),
      found: shown(value),
      expected: `at most ${mostEntries} entries`,
      mend: 'Split the list over several files.',
    });
    return value.length;
  }
  let count = 1;
  for (const [key, inner] of Object.entries(value)) {
    const step = { key: Array.isArray(value) ? Number(key) : key, value: inner };
    path.push(step);
    if (typeof step.key === 'string') {
      held.fields++;
      refuseHidden(key, path, problems);
    }
    count += countChecked(inner, path, problems, held);
    path.pop();
  }
  return count;
}

function refuseHidden(text: string, path: readonly PathStep[], problems: Problem[]): void {
  if (problems.length >= mostHidden || !hasHidden(text)) return;
  problems.push({
    place: placeOf(path, ''),
    found: shown(text),
    expected: 'text without control or direction-changing characters',
    mend: 'Type the text afresh; such characters often come along when text is pasted.',
  });
}
