/**
 * Is this value a build, and if not, what exactly is wrong with it? A parsed document in, a complete
 * `Build` out, or an `InputError` with every fault at once: form and references together. Nothing is
 * repaired silently, and a document of a newer version is refused as it is. Whether its rules can
 * hold together is asked by `file`.
 *
 * Limits (our judgement): 50 problems told in full, the rest counted.
 */
import * as v from 'valibot';
import { checkedAgainst, hasHidden } from '../../finish/parse.ts';
import { finishFaults } from '../../finish/rack/rack.ts';
import { InputError, type Problem, shown } from '../../ground/problem.ts';
import {
  alternativeSchema,
  type Build,
  buildSchema,
  buildVersion,
  partSchema,
  refOf,
  ruleSchema,
} from '../build.ts';
import { type Outline, outlineOf, referenceProblems } from '../reference.ts';

/** Problems told in full; the rest are counted. */
export const mostProblems = 50;
type Fields = Readonly<Record<string, unknown>>;
/** From each older version, how to raise a document by one version. */
export type Migrations = ReadonlyMap<number, (old: Fields) => Fields>;
const migrations: Migrations = new Map([
  // In version 1 every part was on the model, which is what version 2 takes for granted.
  [1, (old) => old],
]);

/**
 * The build in an already parsed value, such as work restored from the browser. Throws like
 * `parseBuild`, save that rules which contradict each other pass: open work must come back even
 * while its rules are being changed.
 */
export function buildFrom(value: unknown, source = 'build'): Build {
  const current = raised(documentFrom(value, source), migrations, buildVersion);
  const hidden = hiddenProblems(current);
  if (hidden.length > 0) throw new InputError(shortened(hidden), source);
  const { build, problems } = read(current, source);
  const found = [
    ...problems,
    ...referenceProblems(build ? outlineOf(build) : outlineIn(current)),
    ...(build?.finishes ?? []).flatMap((one) => finishFaults(one, `finishes › ${refOf(one)}`)),
  ];
  if (build === undefined || found.length > 0) throw new InputError(shortened(found), source);
  return build;
}

/** The value as a document of ours, of a version this program can read. */
function documentFrom(value: unknown, source: string): Fields {
  const refuse = (place: string, found: string, expected: string, mend: string): never => {
    throw new InputError([{ place, found, expected, mend }], source);
  };
  if (!isFields(value)) {
    return refuse('', shown(value), 'a build document', 'Check that this is the file you meant.');
  }
  const { format, version } = value;
  if (format !== 'testspoon-build') {
    const mend =
      typeof format === 'string' && format.startsWith('testspoon-')
        ? 'This is another kind of Testspoon file; open it where that kind belongs.'
        : 'Check that this is a build file; its first fields are "format" and "version".';
    return refuse('format', shown(format), 'testspoon-build', mend);
  }
  if (typeof version !== 'number' || !Number.isInteger(version) || version < 1) {
    const mend = `Add "version": ${buildVersion} if the file was written by hand.`;
    return refuse('version', shown(version), `a whole number from 1 to ${buildVersion}`, mend);
  }
  if (version > buildVersion) {
    const mend = 'A newer Testspoon wrote this file; open it there. It was left untouched.';
    return refuse('version', shown(version), `at most ${buildVersion}`, mend);
  }
  return value;
}

/** `old` raised step by step to `version`. Throws `RangeError` where a step is not in `steps`. */
export function raised(old: Fields, steps: Migrations, version: number): Fields {
  let document = old;
  for (let from = Number(old.version); from < version; from++) {
    const step = steps.get(from);
    if (step === undefined) throw new RangeError(`no way from build version ${from}`);
    document = { ...step(document), version: from + 1 };
  }
  return document;
}

function read(document: Fields, source: string): { build?: Build; problems: readonly Problem[] } {
  try {
    return { build: checkedAgainst(buildSchema, document, source), problems: [] };
  } catch (error) {
    if (error instanceof InputError) return { problems: error.problems };
    throw error;
  }
}

/** What can be read of a document that failed its schema, so that references are checked too. */
function outlineIn(document: Fields): Outline {
  const finishes = entriesOf(document.finishes);
  const parts = entriesOf(document.parts);
  const textAt = (entry: unknown, field: string): string | undefined => {
    const value = isFields(entry) ? entry[field] : undefined;
    return typeof value === 'string' ? value : undefined;
  };
  const readable = <Schema extends v.GenericSchema>(schema: Schema, list: unknown) =>
    entriesOf(list).map((entry) => {
      const result = v.safeParse(schema, entry, { abortEarly: true });
      return result.success ? result.output : undefined;
    });
  return {
    refs: finishes.map((entry) => {
      const [rack, id] = [textAt(entry, 'rack'), textAt(entry, 'id')];
      return rack === undefined || id === undefined ? undefined : `${rack}/${id}`;
    }),
    partIds: parts.map((entry) => textAt(entry, 'id')),
    parts: readable(partSchema, parts),
    rules: readable(ruleSchema, document.rules),
    alternatives: readable(alternativeSchema, document.alternatives),
    mustRead: entriesOf(document.mustRead).filter((id) => typeof id === 'string'),
    // A date of the wrong shape is the schema's to tell.
    wantedBy: undefined,
  };
}

const isFields = (value: unknown): value is Fields =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
const entriesOf = (value: unknown): readonly unknown[] => (Array.isArray(value) ? value : []);

/** Text with control or direction-changing characters anywhere in the value. */
function hiddenProblems(value: unknown, place = ''): Problem[] {
  if (typeof value === 'string') {
    if (!hasHidden(value)) return [];
    const expected = 'text without control or direction-changing characters';
    return [{ place, found: shown(value), expected, mend: 'Type the text afresh.' }];
  }
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) => {
    const step = Array.isArray(value) ? String(Number(key) + 1) : key;
    if (!Array.isArray(value) && reservedKeys.has(key)) {
      const expected = 'a name that no programming language keeps for itself';
      return [{ place, found: shown(key), expected, mend: 'Give it another name.' }];
    }
    return hiddenProblems(inner, place === '' ? step : `${place} › ${step}`);
  });
}

/** Field names the language keeps; a schema would drop them without a word. */
const reservedKeys = new Set(['__proto__', 'prototype', 'constructor']);

function shortened(problems: readonly Problem[]): Problem[] {
  const more = problems.length - mostProblems;
  if (more <= 0) return [...problems];
  return [
    ...problems.slice(0, mostProblems),
    {
      place: '',
      found: `and ${more} more`,
      expected: 'none',
      mend: 'Mend those above first, then read the file again.',
    },
  ];
}
