/**
 * Is every change kept? Writes begin as soon as a change has been drawn; changes that come while
 * one is under way are kept together by the next. Where the browser refuses, work waits and is
 * tried again.
 *
 * Two tabs never overwrite each other. The tab that opened a build first keeps it; in one that came
 * second a change goes on as a copy with a key and a name of its own, and so it does wherever the
 * store turns out to hold something that this tab has not seen. Until then the second tab follows
 * what the first keeps, and takes its place when that one lets go.
 */
import type { Build } from '../../build/build.ts';
import { cutText, freeName, longestName } from '../../ground/id.ts';
import { isUntouchedDemo, openingProblems, workFromKept } from '../opening/start.ts';
import { amend, follow, newKey, useBench, type Work } from '../store.ts';
import { isAside, putAside, takeFromAside } from './aside.ts';
import { afterKept } from './lasting.ts';
import { pictureLater } from './pictures.ts';
import { rememberOpen } from './pointer.ts';
import { isSaved } from './saved.ts';
import { type KeptState, say, unsay, useStatus } from './status.ts';
import { keepBuild, namesBeside, readBuild, revisionOf } from './store/builds.ts';
import { deletedHere, putBackAsItWas } from './store/deleted.ts';
import { type Known, knowAs, knownAs } from './store/known.ts';
import { hearTabs, type News } from './tabs/channel.ts';
import { type Hold, holdBuild } from './tabs/holding.ts';
import { recover, refuse } from './trouble.ts';

/** After a refusal the browser is asked again this much later, ms. */
const retryMs = 5000;
/** By then what has been changed has reached the screen, ms. */
const seenMs = 40;
const elsewhere = 'elsewhere';
const removed = 'removed';

/** Work that is not kept yet, by key, the latest of each. */
const waiting = new Map<string, Work>();
/** Builds this tab has taken hold of: the open one, and any that is still being kept. */
const holds = new Map<string, Hold>();
let openKey: string | undefined;
let isWriting = false;
let soon: ReturnType<typeof setTimeout> | undefined;
let retrying: ReturnType<typeof setTimeout> | undefined;

let isStarted = false;
/** Begins to keep whatever has been drawn; once. */
export function startKeeping(): void {
  if (isStarted) return;
  isStarted = true;
  hearTabs(onNews);
  // What was changed and left before this was fetched can be had back by undo, so it is kept too.
  for (const { work } of useBench.temporal.getState().pastStates) {
    if (work !== undefined) waiting.set(work.key, work);
  }
  onDrawn(useStatus.getState().drawn);
  useStatus.subscribe(({ drawn }, before) => {
    if (drawn !== before.drawn) onDrawn(drawn);
  });
  // A page that goes does not wait.
  addEventListener('pagehide', () => void write());
  addEventListener('beforeunload', (event) => {
    const { state, drawn } = useStatus.getState();
    if (state === 'unkept' && drawn !== undefined && !isSaved(drawn.build)) event.preventDefault();
  });
}

function onDrawn(work: Work | undefined): void {
  if (work === undefined || isLeftBehind(work)) return;
  if (work.key !== openKey) turnTo(work);
  if (!isKept(work)) show('keeping');
  waiting.set(work.key, work);
  // The change is seen before the store is asked to keep it.
  soon ??= setTimeout(() => void write(), seenMs);
}

/** Keys whose work goes on as a copy; a drawing of it that came late is answered by the copy's. */
const copiedKeys = new Set<string>();
const isLeftBehind = ({ key }: Work): boolean =>
  copiedKeys.has(key) && useBench.getState().work?.key !== key;

/** Nothing to write: the store holds just this, or it is the demo and nobody's own. */
function isKept({ key, build }: Work): boolean {
  const known = knownAs(key);
  return known === undefined ? isUntouchedDemo(build) : known.build === build;
}

const show = (state: KeptState): void => {
  if (useStatus.getState().state !== state) useStatus.setState({ state });
};

/** Other work was opened. */
function turnTo(work: Work): void {
  openKey = work.key;
  unsay(elsewhere);
  unsay(removed);
  take(work.key);
  // What is not kept yet is remembered once it is.
  if (knownAs(work.key) !== undefined) rememberOpen(work.key);
  else if (isUntouchedDemo(work.build)) rememberOpen(undefined);
}

function take(key: string): Hold {
  const held = holds.get(key) ?? holdBuild(key, (isFirst) => onStanding(key, isFirst));
  holds.set(key, held);
  return held;
}

function letGoOfLeft(): void {
  for (const [key, hold] of holds) {
    if (key === openKey || waiting.has(key)) continue;
    hold.release();
    holds.delete(key);
  }
}

async function write(): Promise<void> {
  clearTimeout(soon);
  soon = undefined;
  if (isWriting) return;
  isWriting = true;
  clearTimeout(retrying);
  try {
    for (let next = first(); next !== undefined; next = first()) {
      waiting.delete(next.key);
      await writeOne(next);
    }
    recover('build');
    const { drawn } = useStatus.getState();
    if (drawn !== undefined) show(standing(drawn.key));
  } catch (error) {
    refuse('build', error);
    retrying = setTimeout(() => void write(), retryMs);
  } finally {
    isWriting = false;
    letGoOfLeft();
  }
}
const standing = (key: string): KeptState => {
  if (isAside(key)) return 'unkept';
  return knownAs(key) === undefined ? 'none' : 'kept';
};
const first = (): Work | undefined => waiting.values().next().value;

async function writeOne(work: Work): Promise<void> {
  try {
    if (isKept(work)) {
      await takeFromAside(work.key);
      return;
    }
    // Brought back by undo, it is itself again, whoever else has it open.
    const gone = deletedHere(work.key);
    if (gone !== undefined) await putBackAsItWas(gone);
    if (isKept(work)) {
      standsKept(work.key);
      return;
    }
    if (!(await take(work.key).isFirst())) {
      await goOnAsCopy(work);
      return;
    }
    const problems = openingProblems(work);
    if (problems.length > 0) {
      await putAside(work, problems);
      return;
    }
    // A build deleted elsewhere goes on counting, so that no revision ever means two things.
    const over = knownAs(work.key) ?? deleted.get(work.key);
    const revision = await keepBuild(work.key, work.build, over?.revision);
    if (revision === 'elsewhere') {
      await goOnAsCopy(work);
      return;
    }
    knowAs(work.key, { build: work.build, revision });
    standsKept(work.key);
    await takeFromAside(work.key);
    pictureLater(work);
    afterKept(work.key);
  } catch (error) {
    // It waits on, unless something newer waits already.
    if (!waiting.has(work.key)) waiting.set(work.key, work);
    throw error;
  }
}

/** The store holds the build as it lies on the bench. */
function standsKept(key: string): void {
  if (key !== openKey) return;
  rememberOpen(key);
  unsay(removed);
}

/** Gives work of this tab a key and a name of its own, in everything undo can bring back too. */
async function goOnAsCopy(work: Work): Promise<void> {
  const { key } = work;
  const taken = await namesBeside('');
  const fresh = newKey();
  const latest = waiting.get(key) ?? work;
  const name = freeName(nameOfCopy(latest.build.name), taken);
  const copies = new Map<Build, Build>();
  const copied = (one: Work): Work => {
    const build = copies.get(one.build) ?? { ...one.build, name };
    copies.set(one.build, build);
    return { ...one, key: fresh, build };
  };
  copiedKeys.add(key);
  waiting.delete(key);
  waiting.set(fresh, copied(latest));
  amend((bench) => (bench.work?.key === key ? { ...bench, work: copied(bench.work) } : bench));
  say({
    id: 'copy',
    text: `This build is open in another tab as well, so what you change here goes on as a copy: “${name}”.`,
  });
}

const ending = ' (second tab)';
const nameOfCopy = (name: string): string =>
  name.endsWith(ending) ? name : `${cutText(name, longestName - ending.length - 4)}${ending}`;

function onStanding(key: string, isFirst: boolean): void {
  if (key !== openKey) return;
  void catchUp(key);
  if (isFirst) {
    unsay(elsewhere);
    return;
  }
  say({
    id: elsewhere,
    text:
      'Also open in another tab. What is changed there shows here; what you change here goes on ' +
      'as a copy of its own.',
  });
}

/** What was kept of builds that other tabs have deleted, should they be put back. */
const deleted = new Map<string, Known>();

function onNews(news: News): void {
  if (!('key' in news) || news.key !== openKey) return;
  const { key } = news;
  if (news.kind === 'kept') {
    const before = deleted.get(key);
    if (before?.revision === news.revision && knownAs(key) === undefined) {
      knowAs(key, before);
      unsay(removed);
      show('kept');
    }
    void catchUp(key);
  } else if (news.kind === 'removed') {
    const known = knownAs(key);
    if (known !== undefined) deleted.set(key, known);
    knowAs(key, undefined);
    show('unkept');
    say({
      id: removed,
      text: 'This build was deleted in another tab. It is kept again as soon as you change it.',
    });
  }
}

/** Lays the open build out as another tab has kept it, where nothing was changed here since. */
async function catchUp(key: string): Promise<void> {
  try {
    const revision = await revisionOf(key);
    if (revision === undefined || revision === knownAs(key)?.revision) return;
    const kept = await readBuild(key);
    if (kept === undefined) return;
    const work = await workFromKept(kept.document, kept.card.name);
    const now = useBench.getState().work;
    if (now?.key !== key || !isKept(now)) return;
    knowAs(key, { build: work.build, revision: kept.card.revision });
    follow({ ...work, key });
  } catch {
    // What cannot be read now is met again at the next change, whose revision will not fit.
  }
}
