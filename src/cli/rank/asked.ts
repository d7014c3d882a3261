/**
 * What a ranking in the terminal is asked about: the build as its file has it, open parts let wear
 * more for this ranking, and parts held at one finish. Unknown racks, parts and finishes are told
 * with those there are.
 */
import { type Build, type EmbeddedFinish, isOpen } from '../../build/build.ts';
import { openedTo, widened } from '../../build/edit/widen.ts';
import { InputError, shown } from '../../ground/problem.ts';
import { type Held, partsWithChoice } from '../../ranking/held.ts';
import { rackIds, shelfRack } from '../shelf.ts';

export interface Widening {
  /** Every rack that comes along and the build itself, as far as nothing has to be bought. */
  readonly anythingOnHand?: true;
  /** Racks whose every finish is a candidate. */
  readonly from?: readonly string[];
}

/** The build with more candidates on its open parts. */
export function moreOpen(build: Build, { anythingOnHand, from = [] }: Widening): Build {
  const opened = from.reduce((now, id) => openedTo(now, finishesOf(id)), build);
  if (anythingOnHand === undefined) return opened;
  return widened(opened, [...opened.finishes, ...rackIds.flatMap(finishesOf)]);
}

function finishesOf(id: string): EmbeddedFinish[] {
  const rack = shelfRack(id);
  if (rack !== undefined) return rack.finishes.map((finish) => ({ rack: id, ...finish }));
  throw new InputError([
    {
      place: '--from',
      found: shown(id),
      expected: `one of ${rackIds.join(', ')}`,
      mend: 'Name a rack that comes along; finishes of other racks have to be in the build file.',
    },
  ]);
}

/** Parts held at one finish, from `PART=rack/finish` or `PART=finish`. */
export function heldFrom(build: Build, locks: readonly string[]): Held {
  return Object.fromEntries(
    locks.map((lock) => {
      const at = lock.indexOf('=');
      if (at < 0) throw unreadable(lock);
      const [part, finish] = [lock.slice(0, at), lock.slice(at + 1)];
      if (locks.some((other) => other !== lock && other.startsWith(`${part}=`))) {
        throw heldTwice(part);
      }
      const open = partsWithChoice(build).find(({ id }) => id === part);
      if (open === undefined) throw unknownPart(build, part);
      const ref = open.candidates.find(
        (one) => one === finish || one.slice(one.indexOf('/') + 1) === finish,
      );
      if (ref !== undefined) return [part, ref] as const;
      throw new InputError([
        {
          place: `--lock ${part}`,
          found: shown(finish),
          expected: `one of ${open.candidates.join(', ')}`,
          mend: 'Name a candidate of the part as rack/finish.',
        },
      ]);
    }),
  );
}

const unreadable = (lock: string): InputError =>
  new InputError([
    {
      place: '--lock',
      found: shown(lock),
      expected: 'a part and a finish, as in mirrors=bench-drawer/oyster',
      mend: 'Give PART=rack/finish.',
    },
  ]);

const heldTwice = (part: string): InputError =>
  new InputError([
    {
      place: '--lock',
      found: `${shown(part)} at two finishes`,
      expected: 'one finish for a part',
      mend: 'Take one of the two away.',
    },
  ]);

function unknownPart(build: Build, part: string): InputError {
  const open = partsWithChoice(build).map(({ id }) => id);
  const known = build.parts.find(({ id }) => id === part);
  const why =
    known === undefined ? 'no part of this build' : isOpen(known) ? 'no choice' : 'settled';
  return new InputError([
    {
      place: '--lock',
      found: `${shown(part)} (${why})`,
      expected:
        open.length === 0 ? 'nothing, since no part has a choice' : `one of ${open.join(', ')}`,
      mend: 'Give PART=rack/finish with the id of an open part.',
    },
  ]);
}
