/**
 * What does a reply look like? People's words first, then a code for our tally. Grammar in ABNF
 * ([RFC5234]); a reply is Unicode text, a code is ASCII:
 *
 *     reply   = opening [SP words] LF code
 *     opening = letter " for me" [";" SP choice *("," SP choice)] "."
 *     choice  = name " as " letter           ; name of a part as the round has it
 *     words   = 1*500(character)             ; one line, as `words.ts` leaves them
 *     code    = "[" mark "-" letter *("-" section) "-" check "]"
 *     mark    = 4base32                      ; of the round, see `mark.ts`
 *     letter  = %x41-5A                      ; of an alternative of the round
 *     section = parts / pairs / padding / later
 *     parts   = "P" 1*(letter / "0")         ; one for each part asked, in the round's order; 0: none
 *     pairs   = "V" 1*(letter letter)        ; chosen, passed over; in the order they were put
 *     padding = "K" *(ALPHA / DIGIT)         ; means nothing
 *     later   = ALPHA *(ALPHA / DIGIT)
 *     check   = ALPHA / DIGIT                ; over all letters and digits before it, see `check.ts`
 *     base32  = DIGIT / %x41-48 / %x4A-4B / %x4D-4E / %x50-54 / %x56-5A
 *
 * Padding is written only where the check character would otherwise be one of 0, 1, I, L and O, so
 * that a check never has to be guessed. Parts and pairs are written only where there are any.
 *
 * A reader takes more than a writer gives: small letters, white space inside the brackets, any
 * dash for a hyphen, O for 0 and I or L for 1 in a mark, and where the round and the check leave
 * one meaning elsewhere; square brackets of other scripts; no brackets at all behind its own mark.
 *
 * What every version keeps, so that each reply ever produced can be counted:
 * - mark, letter and check stay where they are and mean what they mean; so do P, V and K.
 * - A new section takes a new letter. From A to M it adds something, and a reader that does not
 *   know it passes over it. From N to Z it changes what the answer means, and a reader that does
 *   not know it says that the reply is newer, and counts nothing.
 * - A section stands once. The order of sections means nothing.
 * - A new opening is added to `openings` in `write.ts`; none is taken away or changed.
 * - Every form released stays in `tests/opinion/released` and is read by the suite.
 *
 * In: an answer or the parts of a code. Out: the other. Limits: nobody signs; a code tells what was
 * chosen, never who chose.
 */
import type { Answer, Pair } from '../answer.ts';
import { markOf, meantMark } from '../mark.ts';
import { lettersIn, type Round } from '../round.ts';
import { checkOf } from './check.ts';

/** Why a code is not counted. */
export type Fault =
  /** Its check character is right and its mark another round's. */
  | 'other round'
  /** Mistyped, cut or altered: its check character is wrong. */
  | 'damaged'
  /** Has a section that this version does not know and may not pass over. */
  | 'newer'
  /** Sound, but answers something that this round does not ask. */
  | 'not of this round';

/** What a code says; the words stand beside it. */
export type Choice = Omit<Answer, 'words'>;

/** Characters that are taken for one another when typed from a screen. */
const isConfusable = (character: string): boolean => '01ILO'.includes(character);

const unanswered = '0';

/** The code of an answer to a round, with its brackets. */
export function codeOf(round: Round, { letter, parts, pairs }: Choice): string {
  const asked = round.asks.map((id) => parts[id] ?? unanswered).join('');
  const put = pairs.map(({ chosen, over }) => chosen + over).join('');
  const groups = [
    markOf(round),
    letter,
    ...(/^0*$/.test(asked) ? [] : [`P${asked}`]),
    ...(put === '' ? [] : [`V${put}`]),
  ];
  let whole = groups;
  for (let pad = 2; isConfusable(checkOf(whole.join(''))); pad++) {
    whole = [...groups, pad === 2 ? 'K' : `K${pad - 1}`];
  }
  return `[${[...whole, checkOf(whole.join(''))].join('-')}]`;
}

/** What a code says about a round, its groups in upper case without dashes, or why nothing. */
export function choiceFrom(groups: readonly string[], round: Round): Choice | Fault {
  const [mark = '', ...rest] = groups.slice(0, -1);
  const isSound = (read: readonly string[]): boolean => checkOf(read.join('')) === groups.at(-1);
  const typed = [meantMark(mark), ...rest];
  if (typed[0] !== markOf(round)) {
    return isSound(typed) ? 'other round' : 'damaged';
  }
  const asTyped = isSound(typed) ? choiceOf(typed, round) : 'damaged';
  if (asTyped !== 'damaged' && asTyped !== 'not of this round') return asTyped;
  const letters = lettersIn(round);
  const meant = readingsOf(typed, (letter) => letters.includes(letter)).filter(isSound);
  const [only] = meant;
  return only !== undefined && meant.length === 1 ? choiceOf(only, round) : asTyped;
}

/** With more readings than this the check character decides too little. */
const mostReadings = 4;

/**
 * What groups may mean that cannot stand as they were typed: where only a letter may stand, a 0 was
 * an O and a 1 was an I or L; where no alternative is called O, an O was a 0. What can stand is
 * never read otherwise, so that no single wrong character is ever taken for a choice.
 */
function readingsOf(
  groups: readonly string[],
  isLetter: (letter: string) => boolean,
): readonly (readonly string[])[] {
  let readings: (readonly string[])[] = [[]];
  for (const [at, group] of groups.entries()) {
    const meanings = meaningsOf(group, at, isLetter);
    readings = readings.flatMap((read) => meanings.map((meant) => [...read, meant]));
    if (readings.length > mostReadings) return [];
  }
  return readings;
}

function meaningsOf(
  group: string,
  at: number,
  isLetter: (letter: string) => boolean,
): readonly string[] {
  const isParts = at > 1 && group.startsWith('P');
  if (at === 0 || (at > 1 && !isParts && !group.startsWith('V'))) return [group];
  let meanings = [at > 1 ? group.slice(0, 1) : ''];
  for (const character of at > 1 ? group.slice(1) : group) {
    const meant = meantBy(character, isParts, isLetter);
    meanings = meanings.flatMap((before) => meant.map((one) => before + one));
    if (meanings.length > mostReadings) return [];
  }
  return meanings;
}

function meantBy(
  character: string,
  isParts: boolean,
  isLetter: (letter: string) => boolean,
): readonly string[] {
  if (character === '1') return ['I', 'L'].filter(isLetter);
  if (isParts) return [character === 'O' && !isLetter('O') ? unanswered : character];
  return [character === '0' ? 'O' : character];
}

function choiceOf(groups: readonly string[], round: Round): Choice | Fault {
  const [, letter = '', ...sections] = groups;
  const letters = new Set(lettersIn(round));
  const bodies = new Map(sections.map((section) => [section.slice(0, 1), section.slice(1)]));
  if ([...bodies.keys()].some((name) => /[^A-MPV]/.test(name))) return 'newer';
  const asked = bodies.get('P') ?? unanswered.repeat(round.asks.length);
  const put = bodies.get('V') ?? '';
  const pairs: Pair[] = (put.match(/../g) ?? []).map((pair) => ({
    chosen: pair.slice(0, 1),
    over: pair.slice(1),
  }));
  const isOfRound =
    bodies.size === sections.length &&
    letters.has(letter) &&
    asked.length === round.asks.length &&
    [...asked].every((one) => one === unanswered || letters.has(one)) &&
    put.length % 2 === 0 &&
    pairs.every(({ chosen, over }) => chosen !== over && letters.has(chosen) && letters.has(over));
  if (!isOfRound) return 'not of this round';
  const parts = round.asks.flatMap((id, at) => {
    const chosen = asked.charAt(at);
    return chosen === unanswered ? [] : [[id, chosen] as const];
  });
  return { letter, parts: Object.fromEntries(parts), pairs };
}
