/**
 * Which racks does the builder have? Those kept from the last visit, else the two that come with
 * Testspoon, so that there is something to choose from on the first evening. Every change is kept;
 * what other tabs keep is taken in, by rack and finish (`merge`).
 */
import { withoutHidden } from '../../finish/parse.ts';
import { parseRack, type Rack } from '../../finish/rack/rack.ts';
import { problemSentence } from '../../ground/problem.ts';
import { textOf } from '../opening/garage.ts';
import { amend, layOutRacks, useBench } from '../store.ts';
import { type Changes, changesBetween, isNothing, withChanges } from './merge.ts';
import { say, unsay } from './status.ts';
import {
  keepRackChanges,
  keptRacks,
  type Shelf,
  takeInRacks,
  type Unreadable,
} from './store/racks.ts';
import { hearTabs, tellTabs } from './tabs/channel.ts';
import { recover, refuse } from './trouble.ts';

type Racks = readonly Rack[];

const starters = import.meta.glob<string>('../../../palettes/*.json', {
  query: '?url',
  import: 'default',
  eager: true,
});

/** The racks that come with Testspoon. */
export const starterRacks = (): Promise<Racks> =>
  Promise.all(
    Object.entries(starters).map(async ([path, url]) =>
      parseRack(await textOf(url), path.replace(/^.*\//, '')),
    ),
  );

/** After a refusal the browser is asked again this much later, ms. */
const retryMs = 5000;

/** The racks as the store has them, as far as this tab knows. */
let shelf: Shelf | undefined;
/** One thing after another: writing, and reading what others have written. */
let last: Promise<void> = Promise.resolve();
let isDue = false;

let isFetched = false;
/** Lays out the builder's racks, and begins to keep them; once. */
export async function fetchRacks(): Promise<void> {
  if (isFetched) return;
  isFetched = true;
  const kept = await keptRacks().catch(() => undefined);
  if (kept !== undefined && kept.unreadable.length > 0) tellUnreadable(kept.unreadable);
  shelf = kept?.shelf ?? { racks: await starterRacks(), revisions: undefined };
  layOutRacks(shelf.racks);
  useBench.subscribe(({ racks }, before) => {
    if (racks !== before.racks) due();
  });
  hearTabs(({ kind }) => {
    if (kind === 'racks') due();
  });
}

const told = ({ name, problem }: Unreadable): string =>
  `“${withoutHidden(name)}”${problem === undefined ? '' : ` (${problemSentence(problem).replace(/\.$/, '')})`}`;

const tellUnreadable = (racks: readonly Unreadable[]): void =>
  say({
    id: 'unreadable-racks',
    text:
      `${racks.length === 1 ? 'One rack' : `${racks.length} racks`} kept in this browser could not be ` +
      `read: ${racks.map(told).join('; ')}. Nothing of it was changed.`,
    remedies: ['unreadable-racks'],
  });

const refusedRacks = 'refused-racks';
function tellRefused(racks: readonly Unreadable[]): void {
  if (racks.length === 0) {
    unsay(refusedRacks);
    return;
  }
  say({
    id: refusedRacks,
    text:
      `The last change left a rack that could not be read again: ${racks.map(told).join('; ')}. ` +
      'What was kept of it before stays as it was. Undo takes the change back.',
  });
}

function due(): void {
  if (isDue) return;
  isDue = true;
  last = last.then(bringTogether).then(
    () => recover('racks'),
    (error: unknown) => {
      refuse('racks', error);
      setTimeout(due, retryMs);
    },
  );
}

/** Writes what has changed here, then takes in what has changed elsewhere. */
async function bringTogether(): Promise<void> {
  isDue = false;
  for (;;) {
    const now = useBench.getState().racks;
    if (shelf === undefined || now === undefined) return;
    const own = changesBetween(shelf.racks, now);
    const known: Shelf = { ...shelf, racks: now };
    const written = isNothing(own) ? known : await keepOwn(shelf, known, own);
    const met = await takeInRacks(written);
    if (!isNothing(own)) tellTabs({ kind: 'racks' });
    shelf = met;
    takeIn(now, met.racks);
    if (useBench.getState().racks === met.racks) return;
  }
}

async function keepOwn(before: Shelf, after: Shelf, changes: Changes): Promise<Shelf> {
  const { refused, ...written } = await keepRackChanges(before, after, changes);
  tellRefused(refused);
  return written;
}

/** Lays out racks as they are once others' changes are in; what was changed here since stays. */
function takeIn(known: Racks, met: Racks): void {
  const present = useBench.getState().racks;
  if (present === undefined) return;
  const later = changesBetween(known, present);
  const taken = new Map<Racks, Racks>();
  const incoming: Changes = changesBetween(known, met);
  if (isNothing(incoming) && present === known && known === met) return;
  amend((bench) => {
    if (bench.racks === undefined) return bench;
    const racks =
      taken.get(bench.racks) ??
      (bench.racks === present ? withChanges(met, later) : withChanges(bench.racks, incoming));
    taken.set(bench.racks, racks);
    return { ...bench, racks };
  });
}
