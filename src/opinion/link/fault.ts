/** Why does a link not open? One of five faults, told in words, and how much of it arrived. */
import { InputError, type Problem } from '../../ground/problem.ts';

/**
 * `none`: there is no link; `cut`: its end is missing; `altered`: characters are not those that were
 * sent; `newer`: whole, but of a version this program does not know; `unreadable`: whole, but no
 * round that a builder's page would have written.
 */
export type LinkFault = 'none' | 'cut' | 'altered' | 'newer' | 'unreadable';

/** A link that does not open. */
export class LinkError extends InputError {
  readonly fault: LinkFault;
  /** Characters that arrived; of cut links only. */
  readonly arrived: number | undefined;
  /** Of how many; absent where not even the beginning that tells it arrived. */
  readonly of: number | undefined;

  constructor(fault: LinkFault, problems: readonly Problem[], arrived?: number, of?: number) {
    super(problems, 'the link');
    this.name = 'LinkError';
    this.fault = fault;
    this.arrived = arrived;
    this.of = of;
  }
}

const mends: Readonly<Record<LinkFault, string>> = {
  none: 'Paste the whole address you were given, with all that stands behind “#”.',
  cut: 'Some places shorten long links. Copy it again from where it stands in full, to its last character.',
  altered: 'Copy it again from where it came, or ask for it again; nothing was guessed.',
  newer: 'Reload this page, or open the link where the program is up to date.',
  unreadable: 'Ask for the link again where it came from.',
};

/** The fault with what was found. */
export const fault = (kind: LinkFault, found: string, arrived?: number, of?: number): LinkError =>
  new LinkError(
    kind,
    [{ place: '', found, expected: 'a whole link to a round', mend: mends[kind] }],
    arrived,
    of,
  );
