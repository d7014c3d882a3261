/**
 * The worker that thinks rules through: a build in; out how many combinations there are and keep
 * them, whether rules clash, why, and what would free them.
 */
import type { Build } from '../../build/build.ts';
import { type Told, toldArgument } from '../../build/choice/because.ts';
import { type CombinationCount, combinationCount } from '../../build/choice/combination.ts';
import { argumentAgainst } from '../../build/choice/consequence.ts';
import { type Contradiction, contradictions } from '../../build/choice/contradiction.ts';
import { type Remedy, remediesFor } from '../../build/choice/remedy.ts';

export interface ToThink {
  readonly build: Build;
  /** Whether reasons and ways out are wanted too. */
  readonly isWhole: boolean;
}

export interface Clash extends Contradiction {
  /** Undefined where no short argument shows it. */
  readonly told: Told | undefined;
  readonly remedies: readonly Remedy[];
}

export interface Thought {
  readonly count: CombinationCount;
  readonly verdict: 'can-hold' | 'cannot-hold' | 'not-settled';
  readonly clash: Clash | undefined;
}

function think({ build, isWhole }: ToThink): Thought {
  const verdict = contradictions(build);
  if (verdict.kind !== 'cannot-hold') {
    return { count: combinationCount(build), verdict: verdict.kind, clash: undefined };
  }
  const { contradiction } = verdict;
  const argument = isWhole ? argumentAgainst(build, contradiction.rules) : undefined;
  return {
    count: { ...combinationCount({ ...build, rules: [] }), keepingRules: 0n },
    verdict: 'cannot-hold',
    clash: {
      ...contradiction,
      told: argument && toldArgument(build, argument),
      remedies: isWhole ? remediesFor(build, contradiction.rules) : [],
    },
  };
}

self.addEventListener('message', ({ data }: MessageEvent<ToThink>) => {
  self.postMessage(think(data));
});
