/** What a link holds that no link should: told by place, with what would have been right. */
import { InputError, shown } from '../../ground/problem.ts';

/** Throws `InputError` for what was found at a place. */
export function refuse(place: string, found: unknown, expected: string): never {
  const mend = 'Ask for the link again where it came from.';
  throw new InputError([{ place, found: shown(found), expected, mend }], 'the link');
}
