/**
 * What does a builder ask, as typed on a command line? Alternatives by letter, parts by name or id,
 * the folder of the page by its address; a wrong one is told with what would be right.
 */
import { InvalidArgumentError } from 'commander';
import type { Build, Part } from '../../build/build.ts';
import { nearestWord } from '../../build/nearest.ts';
import { InputError, type Problem, shown } from '../../ground/problem.ts';
import { type Asking, differingParts, lettersIn, mostAsked, roundOf } from '../../opinion/round.ts';
import { listed } from '../../opinion/spoken.ts';

/** Reads `--letters`: one letter each, as `A,C`, `a c` or `AC`. */
export function lettersFrom(text: string): readonly string[] {
  const letters = text.toUpperCase().replace(/[\s,]/g, '');
  if (/^[A-Z]+$/.test(letters)) return [...new Set(letters)];
  throw new InvalidArgumentError('Give letters with commas between, such as A,C.');
}

/** Reads `--base`: the address of a folder, or of one of its pages, to the folder's last slash. */
export function baseFrom(text: string): string {
  const typed = text.trim();
  const whole = /^[a-z][a-z0-9+.-]*:\/\//i.test(typed) ? typed : `https://${typed}`;
  if (/\s/.test(typed) || !URL.canParse(whole)) {
    throw new InvalidArgumentError('Give an address such as https://cars.example/testspoon/.');
  }
  const { protocol, username, password, host, pathname } = new URL(whole);
  if (protocol !== 'http:' && protocol !== 'https:') {
    throw new InvalidArgumentError('Give an address that begins with https:// or http://.');
  }
  if (username !== '' || password !== '') {
    throw new InvalidArgumentError('Leave name and password out: everyone would read them.');
  }
  const isPage = /\.html?$/i.test(pathname);
  const folder = isPage ? pathname.replace(/[^/]*$/, '') : pathname.replace(/\/?$/, '/');
  return `${protocol}//${host}${folder}`;
}

/** What the faults are of. */
const source = 'What is to be asked';

interface Typed {
  readonly ask: readonly string[];
  readonly letters: readonly string[] | undefined;
}

/** What is asked. Throws `InputError` with every letter and part that cannot be. */
export function askingFrom(build: Build, { ask, letters }: Typed): Asking {
  const ids = idsOf(build, letters);
  const asked = { ...build, alternatives: build.alternatives.filter(({ id }) => ids.includes(id)) };
  const differing = differingParts(asked);
  const problems: Problem[] = [];
  const parts = ask.flatMap((typed) => {
    const found = partsNamed(build, typed);
    const differs = found.filter(({ id }) => differing.includes(id));
    if (differs.length === 0) {
      problems.push(found.length === 0 ? noPart(typed, build) : alike(typed, build, differing));
    }
    return differs.map(({ id }) => id);
  });
  if (problems.length > 0) throw new InputError(problems, source);
  return { alternatives: ids, parts };
}

/** Ids of the alternatives of these letters; of all where none are given. */
function idsOf(build: Build, letters: readonly string[] | undefined): string[] {
  const known = lettersIn(roundOf(build));
  const strangers = (letters ?? []).filter((letter) => !known.includes(letter));
  const ids = build.alternatives
    .slice(0, mostAsked)
    .flatMap(({ id }, at) => ((letters?.includes(known[at] ?? '') ?? true) ? [id] : []));
  const problem =
    strangers.length > 0
      ? {
          place: '--letters',
          found: strangers.join(', '),
          expected: `letters among ${listed(known, 'and')}`,
          mend: `Choose among the letters of this build, as “testspoon score” shows them.`,
        }
      : ids.length < 2
        ? {
            place: letters === undefined ? 'alternatives' : '--letters',
            found: ids.length === 0 ? 'no alternative' : 'one alternative',
            expected: 'at least two to choose from',
            mend:
              known.length < 2
                ? 'Add another alternative to the build.'
                : 'Name two letters or more, or leave --letters out to ask about all.',
          }
        : undefined;
  if (problem !== undefined) throw new InputError([problem], source);
  return ids;
}

const folded = (text: string): string => text.normalize('NFC').trim().toLocaleLowerCase('en');

/** The part of this id, or parts of this name, capitals or not. */
function partsNamed({ parts }: Build, typed: string): readonly Part[] {
  const exact = parts.filter(({ id }) => id === typed);
  return exact.length > 0
    ? exact
    : parts.filter(({ id, name }) => [id, name].map(folded).includes(folded(typed)));
}

/** Names of parts told in one line. */
const mostTold = 12;

function namesOf({ parts }: Build, ids: readonly string[]): string {
  const names = parts.filter(({ id }) => ids.includes(id)).map(({ name }) => name);
  const rest = names.length - mostTold;
  return rest > 0 ? `${names.slice(0, mostTold).join(', ')} and ${rest} more` : names.join(', ');
}

function noPart(typed: string, build: Build): Problem {
  const byFolded = new Map(
    build.parts.flatMap(({ id, name }) => [
      [folded(id), name],
      [folded(name), name],
    ]),
  );
  const nearest = byFolded.get(nearestWord(folded(typed), byFolded.keys()) ?? '');
  const meant = nearest === undefined ? '' : ` Did you mean “${nearest}”?`;
  return {
    place: '--ask',
    found: shown(typed),
    expected: 'the name or id of a part of this build',
    mend: `Name a part as the build does.${meant}`,
  };
}

const alike = (typed: string, build: Build, differing: readonly string[]): Problem => ({
  place: '--ask',
  found: `${shown(typed)}, which is the same on all that are asked about`,
  expected:
    differing.length === 0
      ? 'parts that differ; none does'
      : `a part that differs: ${namesOf(build, differing)}`,
  mend: 'Ask about parts that viewers can choose between.',
});
