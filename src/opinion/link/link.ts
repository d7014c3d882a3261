/**
 * What stands behind `#` in the address that viewers are given? A round, packed so that it fits
 * where people talk, and sealed so that one that was cut or altered on the way is told, never
 * guessed at. Fragments are not sent to any server ([RFC3986], section 3.5).
 *
 * In: a round. Out: letters, digits, `-` and `_` only. And back, from whatever was pasted; throws
 * `LinkError`. Three layers, each in a file of its own: the text of a round (`layout`), packed
 * (`pack`), in an envelope that is the same for every version (`envelope`).
 */
import { InputError } from '../../ground/problem.ts';
import type { Round } from '../round.ts';
import { bodyIn, enveloped, envelopeLength, lengthFrom, version } from './envelope.ts';
import { fault, LinkError } from './fault.ts';
import { roundIn, textFrom } from './layout.ts';
import { longestBody, packed, unpacked } from './pack.ts';
import { linksIn } from './pasted.ts';

export { LinkError } from './fault.ts';

/** Page that shows a round, beside the bench. */
export const roundPage = 'round.html';
/** Addresses of more characters are held back or cut in some places; common practice, no source. */
export const longestComfortable = 2000;

/**
 * The link to a round. Throws `InputError` where there is nothing to choose from, or where the link
 * would be too long to be of use anywhere.
 */
export function linkOf(round: Round): string {
  if (round.build.alternatives.length > 0) return enveloped(packed(textFrom(round)));
  const found = 'no alternative';
  const mend =
    'Keep or ask about at least one alternative, better two, so that viewers can choose.';
  throw new InputError([{ place: '', found, expected: 'at least one', mend }], 'the link');
}

/** Address of a round; `base` is the folder of the page, with a slash at its end. */
export const addressOf = (base: string, round: Round): string =>
  `${base}${roundPage}#${linkOf(round)}`;

/** The round of a link, as pasted: a whole address, a fragment, in quotes, brackets or a sentence. */
export function roundFrom(pasted: string): Round {
  let told: LinkError | undefined;
  for (const link of linksIn(pasted)) {
    try {
      return opened(link);
    } catch (error) {
      if (!(error instanceof LinkError)) throw error;
      if (told === undefined || tells(error) > tells(told)) told = error;
    }
  }
  throw told ?? fault('none', 'no link');
}

/** How sure it is that a text with this fault was meant as a link. */
const tells = ({ fault: kind, of }: LinkError): number =>
  kind === 'newer' || kind === 'unreadable' ? 3 : of !== undefined ? 2 : kind === 'none' ? 0 : 1;

function opened(link: string): Round {
  const of = lengthFrom(link) ?? 0;
  if (link[0] === version && of > longestBody + envelopeLength) {
    throw fault('altered', `a beginning that tells of ${of} characters, more than any link has`);
  }
  const text = unpacked(bodyIn(link));
  try {
    return roundIn(text);
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    throw new LinkError('unreadable', error.problems);
  }
}
