/**
 * Can this file be opened as a build? Its text in, a complete `Build` out, or an `InputError` with
 * every fault at once: those of the document (`read/document`), then, where it is to be judged
 * rather than worked on, rules that can never be kept. And the other way: a build as the text of
 * its file, which opens whatever its rules say.
 *
 * Limits (our judgement): 32 MB of text.
 */
import { parseJson } from '../finish/parse.ts';
import { InputError } from '../ground/problem.ts';
import type { Build } from './build.ts';
import { contradictions } from './choice/contradiction.ts';
import { jsonText } from './layout.ts';
import { buildFrom } from './read/document.ts';

/** Longest build text, bytes of UTF-8. */
export const mostBuildBytes = 32_000_000;
/** Rules of a contradiction named by number before the rest is counted. */
const mostNumbers = 12;

/**
 * The build in `text`, to be worked on: its rules may contradict each other, which whoever edits
 * them is told where they stand. Throws `InputError` with every problem on too much text, broken
 * JSON, another format or version, and faults of form or reference.
 */
export const openBuild = (text: string, source = 'build'): Build =>
  buildFrom(parseJson(text, source, mostBuildBytes), source);

/** The same, to be judged: throws on rules that cannot hold together as well. */
export function parseBuild(text: string, source = 'build'): Build {
  const build = openBuild(text, source);
  const verdict = contradictions(build);
  if (verdict.kind !== 'cannot-hold') return build;
  const { rules, sentence } = verdict.contradiction;
  const numbers = rules.slice(0, mostNumbers).map((index) => String(index + 1));
  const more = rules.length - numbers.length;
  throw new InputError(
    [
      {
        place: `rules › ${numbers.join(', ')}${more > 0 ? ` and ${more} more` : ''}`,
        found: 'a contradiction',
        expected: 'rules that at least one combination of candidates keeps',
        mend: `${sentence} Loosen one of these rules, or add a candidate.`,
      },
    ],
    source,
  );
}

/** Order of the fields in a build file: what a reader looks for first comes first. */
const fieldOrder = [
  ...[
    '$schema',
    'format',
    'version',
    'rack',
    'id',
    'kind',
    'name',
    'story',
    'role',
    'car',
    'scale',
  ],
  ...['viewing', 'distanceMm', 'wantedBy', 'weights', 'tonal', 'mustRead', 'covers', 'absent'],
  ...['effect', 'colour', 'face', 'flop', 'flopIndex', 'gloss60', 'sampleGloss60', 'coats'],
  ...['chemistry', 'undercoats', 'clear', 'tint', 'srgb', 'lab', 'light', 'spectrum', 'nm'],
  ...['reflectance', 'provenance', 'how', 'deltaE', 'bottle', 'onHand', 'leadDays'],
  ...['contrast', 'accent', 'sheen', 'harmony', 'steadiness', 'readiness'],
  ...['part', 'finish', 'painted', 'candidates', 'when', 'wants', 'oneOf', 'first', 'second'],
  ...['count', 'date', 'percent', 'finishes', 'parts', 'rules', 'alternatives', 'note', 'choices'],
];

/**
 * A build as file text, the same text for the same build; choices follow the order of the parts.
 * Defaults are written out, so that a later change of a default cannot change a saved build.
 */
export const textOf = (build: Build): string =>
  jsonText(build, [...fieldOrder, ...build.parts.map((part) => part.id)]);
