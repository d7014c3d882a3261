/**
 * What do the rules of a build come to? Thought through in a worker, which may take a second, so
 * that the page never waits; remembered for as long as parts, rules and finishes are the same
 * objects. Of builds that come faster than answers only the newest is thought through.
 */
import { useEffect, useState } from 'react';
import type { Build } from '../../build/build.ts';
import type { Thought, ToThink } from './thinking.ts';

interface Asked {
  readonly build: Build;
  readonly isWhole: boolean;
}

let worker: Worker | undefined;
let running: Asked | undefined;
/** The open work, a rule being written, and what holds without it: each waits in its own place. */
type Place = 'standing' | 'without' | 'written';
const waiting: Record<Place, Asked | undefined> = {
  standing: undefined,
  without: undefined,
  written: undefined,
};
const listeners = new Set<() => void>();

type Answers = { readonly parts: Build['parts']; readonly finishes: Build['finishes'] } & {
  readonly isWhole: boolean;
  readonly thought: Thought;
};
const known = new WeakMap<Build['rules'], Answers[]>();

const knownFor = ({ build, isWhole }: Asked): Thought | undefined =>
  known
    .get(build.rules)
    ?.find(
      (answer) =>
        answer.parts === build.parts &&
        answer.finishes === build.finishes &&
        (answer.isWhole || !isWhole),
    )?.thought;

function keep({ build, isWhole }: Asked, thought: Thought): void {
  const { parts, finishes, rules } = build;
  // Only the latest of each kind: earlier states come back by undo, and are thought through again.
  const others = (known.get(rules) ?? []).filter((answer) => answer.isWhole !== isWhole);
  known.set(rules, [...others, { parts, finishes, isWhole, thought }]);
}

function next(): void {
  const place = (['standing', 'without', 'written'] as const).find((one) => waiting[one]);
  const asked = place && waiting[place];
  if (running !== undefined || place === undefined || asked === undefined) return;
  waiting[place] = undefined;
  worker ??= startWorker();
  running = asked;
  // What alternatives wear plays no part in it.
  const toThink: ToThink = { ...asked, build: { ...asked.build, alternatives: [] } };
  worker.postMessage(toThink);
}

function startWorker(): Worker {
  const started = new Worker(new URL('./thinking.ts', import.meta.url), { type: 'module' });
  const done = (): void => {
    running = undefined;
    next();
    for (const listener of listeners) listener();
  };
  started.addEventListener('message', ({ data }: MessageEvent<Thought>) => {
    if (running !== undefined) keep(running, data);
    done();
  });
  // One that failed, or never came, is started anew for the next question.
  started.addEventListener('error', () => {
    started.terminate();
    worker = undefined;
    done();
  });
  return started;
}

/**
 * What the rules of the build come to; undefined while that is being thought through. `whole` for
 * the open work, reasons and all; `written` for a build with a rule that is being written, `without`
 * for the same build without that rule.
 */
export function useThought(build: Build | undefined, kind: Place): Thought | undefined {
  const [, refresh] = useState(0);
  const isWhole = kind === 'standing';
  useEffect(() => {
    const listener = (): void => refresh((count) => count + 1);
    listeners.add(listener);
    return () => {
      listeners.delete(listener);
    };
  }, []);
  useEffect(() => {
    const asked = build && { build, isWhole };
    const isRunning = running?.build === build && running?.isWhole === isWhole;
    waiting[kind] = asked && !isRunning && knownFor(asked) === undefined ? asked : undefined;
    next();
  }, [build, isWhole, kind]);
  return build && knownFor({ build, isWhole });
}
