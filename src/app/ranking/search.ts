/**
 * Where does the search stand? One at a time, in a worker that is ended when it is stopped, so that
 * stopping takes no time and the page never waits. What was found stays until something better has
 * come. Kept out of the undo history; goes on while the builder looks at something else.
 */
import { create } from 'zustand';
import type { FinishRef } from '../../build/build.ts';
import type { Problem } from '../../ground/problem.ts';
import type { RuleCosts } from '../../ranking/answer/price.ts';
import { type Held, withHeld } from '../../ranking/held.ts';
import type { Ranking } from '../../ranking/ranking.ts';
import { useArea } from '../area.ts';
import { useBench } from '../store.ts';
import { isSameQuestion, isSmall, type Question } from './question.ts';
import type { About, Told, ToSearch } from './searching.ts';

/** A ranking, the question it answers, and what has been found out about it. */
export interface Answer {
  readonly question: Question;
  readonly ranking: Ranking;
  readonly about: About;
}

type End = 'found' | 'stopped' | 'refused' | 'failed';

interface Search {
  /** Rows wanted. */
  readonly count: number;
  /** Only plainly different ones. */
  readonly isDifferent: boolean;
  readonly held: Held;
  /** What is being searched for. */
  readonly running: Question | undefined;
  /** What was asked last, how that ended and how long it took, ms. */
  readonly last:
    | { readonly question: Question; readonly end: End; readonly tookMs: number }
    | undefined;
  readonly answer: Answer | undefined;
  /** Why nothing could be ranked, and which rules stand in the way. */
  readonly problems: readonly Problem[];
  readonly inTheWay: RuleCosts | undefined;
  /** More is being found out about the answer. */
  readonly isThinking: boolean;
}

const nothing = {
  held: {},
  running: undefined,
  last: undefined,
  answer: undefined,
  problems: [],
  inTheWay: undefined,
  isThinking: false,
} as const;

export const useSearch = create<Search>()(() => ({ ...nothing, count: 10, isDifferent: false }));

/** Holds a part at one finish, or lets it go. */
export const hold = (part: string, ref: FinishRef | undefined): void =>
  useSearch.setState(({ held: { [part]: _, ...others } }) => ({
    held: ref === undefined ? others : { ...others, [part]: ref },
  }));

let worker: Worker | undefined;
let begunMs = 0;
/** The newest question that came while a short search was on, such as at every step of a slider. */
let waiting: Question | undefined;

function ended(): void {
  worker?.terminate();
  worker = undefined;
  waiting = undefined;
}

/** Searches for an answer, in the place of any other search. */
export function startSearch(question: Question): void {
  const { running, last, isThinking } = useSearch.getState();
  const busyWith = running ?? (isThinking ? last?.question : undefined);
  const isSoonFree = busyWith === undefined || isSmall(busyWith.build, busyWith.held);
  if (running !== undefined && isSoonFree) {
    waiting = question;
    return;
  }
  if (!isSoonFree) ended();
  begunMs = performance.now();
  useSearch.setState({ running: question, problems: [], inTheWay: undefined, isThinking: false });
  worker ??= startWorker();
  const { build, sight, wanted, held } = question;
  const toSearch: ToSearch = { build: withHeld(build, held), sight, wanted };
  worker.postMessage(toSearch);
}

const lastOf = (question: Question, end: End) => ({
  question,
  end,
  tookMs: performance.now() - begunMs,
});

/** A search after one that took no longer than this is begun unasked (our judgement), ms. */
const quickMs = 1500;

/** Whether a changed build is ranked anew without being asked: it is small, or the last took no time. */
export function isQuick({ build, held }: Question): boolean {
  const { running, last } = useSearch.getState();
  if (isSmall(build, held)) return true;
  return running === undefined && last?.end === 'found' && last.tookMs < quickMs;
}

/** Ends the search at once; what has been found stays. */
export function stopSearch(): void {
  const { running } = useSearch.getState();
  if (running === undefined) return;
  ended();
  useSearch.setState({ running: undefined, last: lastOf(running, 'stopped') });
}

function startWorker(): Worker {
  const started = new Worker(new URL('./searching.ts', import.meta.url), { type: 'module' });
  started.addEventListener('message', ({ data }: MessageEvent<Told>) => {
    if (started === worker) hear(data);
  });
  started.addEventListener('error', () => {
    if (started !== worker) return;
    const { running } = useSearch.getState();
    ended();
    useSearch.setState({ running: undefined, isThinking: false });
    if (running !== undefined) useSearch.setState({ last: lastOf(running, 'failed') });
  });
  return started;
}

function hear(told: Told): void {
  const { running: question, answer } = useSearch.getState();
  if (told.kind === 'about' || told.kind === 'said') {
    // Nothing is said about a ranking once another search has begun.
    if (question !== undefined) return;
    if (told.kind === 'said') useSearch.setState({ isThinking: false });
    else if (answer === undefined) useSearch.setState({ inTheWay: told.about.costs });
    else useSearch.setState({ answer: { ...answer, about: { ...answer.about, ...told.about } } });
    return;
  }
  if (question === undefined) return;
  if (told.kind === 'so-far') {
    useSearch.setState({ answer: { question, ranking: told.ranking, about: {} } });
    return;
  }
  if (told.kind === 'found') {
    useSearch.setState({
      running: undefined,
      last: lastOf(question, 'found'),
      isThinking: true,
      answer: { question, ranking: told.ranking, about: {} },
    });
  } else {
    useSearch.setState({
      running: undefined,
      last: lastOf(question, 'refused'),
      isThinking: true,
      answer: undefined,
      problems: told.problems,
    });
  }
  const next = waiting;
  waiting = undefined;
  if (next !== undefined) startSearch(next);
}

/** Whether this is being searched for, or was asked last. */
export function isAsked(question: Question): boolean {
  const { running, last } = useSearch.getState();
  const latest = waiting ?? running ?? last?.question;
  return latest !== undefined && isSameQuestion(latest, question);
}

useBench.subscribe((now, before) => {
  if (now.work?.key !== before.work?.key) {
    // Other work has other parts.
    ended();
    useSearch.setState(nothing);
    return;
  }
  // Where nobody looks, nothing goes on that answers no question any more.
  const { running } = useSearch.getState();
  if (running === undefined || now.work === undefined) return;
  if (useArea.getState().area === 'ranking') return;
  if (!isSameQuestion(running, { ...running, build: now.work.build })) stopSearch();
});
