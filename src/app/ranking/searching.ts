/**
 * The worker that ranks: a question in; out the best so far while the search goes on, the ranking it
 * ends with, then one by one what there is to say about it; or in words why nothing can be ranked.
 * What is asked meanwhile comes first: the rest about the question before is then left unsaid.
 */
import type { Build } from '../../build/build.ts';
import type { SightTable } from '../../car/table.ts';
import { InputError, type Problem } from '../../ground/problem.ts';
import { paretoSet } from '../../ranking/answer/pareto.ts';
import { type RuleCosts, ruleCosts } from '../../ranking/answer/price.ts';
import { type Sureness, surenessOf } from '../../ranking/answer/sure.ts';
import { type UnbeatenRows, unbeatenRows } from '../../ranking/answer/unbeaten.ts';
import { rankBuild } from '../../ranking/rank.ts';
import type { Ranking, Wanted } from '../../ranking/ranking.ts';
import { type Judged, judge } from '../../score/judged.ts';

export interface ToSearch {
  readonly build: Build;
  readonly sight: SightTable;
  readonly wanted: Wanted;
}

/** What is found out about a ranking once it stands. */
export interface About {
  readonly sureness?: Sureness;
  /** As many rules as have been priced so far. */
  readonly costs?: RuleCosts;
  readonly unbeaten?: UnbeatenRows;
}

export type Told =
  | { readonly kind: 'so-far'; readonly ranking: Ranking }
  | { readonly kind: 'found'; readonly ranking: Ranking }
  | { readonly kind: 'about'; readonly about: About }
  /** There is no more to say. */
  | { readonly kind: 'said' }
  | { readonly kind: 'refused'; readonly problems: readonly Problem[] };

/** The page hears of better rows this often at most, ms. */
const everyMs = 250;

/** What takes longer than this is told as far as it is known, ms. */
const mostMs = 10_000;

/** Questions so far. */
let turn = 0;

const tell = (told: Told): void => self.postMessage(told);

function search({ build, sight, wanted }: ToSearch, judged: Judged): Ranking {
  let last = performance.now();
  return rankBuild(
    build,
    sight,
    wanted,
    {
      tell(soFar) {
        const now = performance.now();
        if (now - last < everyMs) return;
        last = now;
        tell({ kind: 'so-far', ranking: soFar });
      },
    },
    judged,
  );
}

/** Says when so much time has passed, ms. */
function within(ms: number): () => boolean {
  const until = performance.now() + ms;
  return () => performance.now() > until;
}

/** What there is to say about a ranking, each to be worked out by itself. */
const stepsAbout = (asked: ToSearch, ranking: Ranking, judged: Judged): (() => void)[] => {
  const { build, sight, wanted } = asked;
  const { rows } = ranking;
  return [
    () => say({ sureness: surenessOf(build, sight, wanted, rows, judged) }),
    () => price(asked, ranking),
    () =>
      say({
        unbeaten: unbeatenRows(rows, paretoSet(build, sight, wanted, within(mostMs), judged)),
      }),
  ];
};

const say = (about: About): void => tell({ kind: 'about', about });

/** What each rule costs; without a ranking, which of them stand in the way of any. */
function price({ build, sight, wanted }: ToSearch, ranking?: Ranking): void {
  if (build.rules.length === 0) return;
  const { today } = wanted;
  let last = performance.now();
  const isOver = within(mostMs);
  const soFar = (costs: RuleCosts): void => {
    if (performance.now() - last < everyMs) return;
    last = performance.now();
    say({ costs });
  };
  say({ costs: ruleCosts(build, sight, { today }, { isOver, tell: soFar }, ranking) });
}

async function answer(asked: ToSearch): Promise<void> {
  turn++;
  const mine = turn;
  const judged = judge(asked.build, asked.sight, asked.wanted);
  const ranking = search(asked, judged);
  tell({ kind: 'found', ranking });
  for (const step of stepsAbout(asked, ranking, judged)) {
    await new Promise((next) => setTimeout(next));
    if (turn !== mine) return;
    step();
  }
  tell({ kind: 'said' });
}

function refuse(asked: ToSearch, problems: readonly Problem[]): void {
  tell({ kind: 'refused', problems });
  if (problems.every(({ place }) => place === 'rules')) price(asked);
  tell({ kind: 'said' });
}

self.addEventListener('message', ({ data }: MessageEvent<ToSearch>) => {
  answer(data).catch((fault: unknown) => {
    if (fault instanceof InputError) refuse(data, fault.problems);
    else {
      setTimeout(() => {
        // Out of the promise, so that the page hears of it.
        throw fault;
      });
    }
  });
});
