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
  const [mark = '', ...rest] = groups;
  const isOurs = meantMark(mark) === markOf(round);
  const sound = meantBy([meantMark(mark), ...rest]);
  if (sound === undefined) return 'damaged';
  if (!isOurs) return 'other round';
  const [, letter = '', ...sections] = sound;
  return choiceOf(letter, sections, round);
}

/** The groups before the check as they were meant, or undefined where the check never is right. */
function meantBy(groups: readonly string[]): readonly string[] | undefined {
  const check = groups.at(-1);
  const typed = groups.slice(0, -1);
  const isSound = (read: readonly string[]): boolean => checkOf(read.join('')) === check;
  if (isSound(typed)) return typed;
  // Only letters stand where these are read; a 0 is a choice in P alone.
  const readings = ['I', 'L'].flatMap((one) =>
    ['O', unanswered].map((none) =>
      typed.map((group, at) => {
        if (at === 0) return group;
        if (at > 1 && !/^[PV]/.test(group)) return group;
        const letters = group.replace(/1/g, one);
        return at > 1 && group.startsWith('P')
          ? letters.replace(/O/g, none)
          : letters.replace(/0/g, 'O');
      }),
    ),
  );
  const sound = new Map(readings.filter(isSound).map((read) => [read.join('-'), read]));
  const [only] = sound.values();
  return sound.size === 1 ? only : undefined;
}

function choiceOf(letter: string, sections: readonly string[], round: Round): Choice | Fault {
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
