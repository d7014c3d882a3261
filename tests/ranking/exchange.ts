/**
 * A generated instance as the text format that toulbar2 reads, and what it answers. toulbar2 is an
 * independent exact solver of cost function networks, a Debian package, used as an outside check
 * alone. Things become variables of two values, a limit a chain of counters, an echo a witness.
 */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Network, never } from '../../src/ranking/network.ts';
import type { Instance } from './generated.ts';

/** Cost that forbids, above every real one. */
const top = 8_000_000;

/** The instance and its network as text. */
export function exchanged({ rack, candidates, globals }: Instance, network: Network): string {
  const sizes = [...network.sizes];
  const functions: string[] = [];
  const add = (variables: readonly number[], tuples: readonly string[]): void => {
    const head = [variables.length, ...variables, 0, tuples.length].join(' ');
    functions.push([head, ...tuples].join('\n'));
  };
  const whole = (cost: number): number => (cost >= never ? top : Math.round(cost));
  network.unary.forEach((unary, i) => {
    add(
      [i],
      Array.from(unary, (cost, a) => `${a} ${whole(cost)}`),
    );
  });
  for (const { i, j, table } of network.edges) {
    const width = network.sizes[j]!;
    const tuples = Array.from(table, (cost, at) =>
      cost === 0 ? '' : `${Math.floor(at / width)} ${at % width} ${whole(cost)}`,
    );
    add([i, j], tuples.filter(Boolean));
  }
  if (globals !== undefined) {
    const bottles: number[] = [];
    rack.forEach(({ onHand }, paint) => {
      const users = candidates.flatMap((list, i) =>
        list.includes(paint) ? [[i, list.indexOf(paint)] as const] : [],
      );
      if (users.length === 0) return;
      const used = sizes.push(2) - 1;
      add([used], [`1 ${globals.perFinish + (onHand ? 0 : globals.perBottle)}`]);
      for (const [i, a] of users) add([i, used], [`${a} 0 ${top}`]);
      if (!onHand) bottles.push(used);
    });
    const counts = Array.from({ length: globals.mostBottles + 1 }, (_, k) => k);
    let before: number | undefined;
    for (const used of bottles) {
      const counter = sizes.push(counts.length) - 1;
      const from = before === undefined ? [0] : counts;
      const wrong = [0, 1].flatMap((use) =>
        from.flatMap((sum) =>
          counts.flatMap((now) =>
            now === sum + use
              ? []
              : [before === undefined ? `${use} ${now} ${top}` : `${use} ${sum} ${now} ${top}`],
          ),
        ),
      );
      add(before === undefined ? [used, counter] : [used, before, counter], wrong);
      before = counter;
    }
    const { echo } = globals;
    const others = candidates.flatMap((_, i) => (i === echo ? [] : [i]));
    const witness = sizes.push(others.length) - 1;
    others.forEach((i, k) => {
      const unlike = candidates[i]!.flatMap((one, a) =>
        candidates[echo]!.flatMap((other, b) => (one === other ? [] : [`${a} ${b} ${k} ${top}`])),
      );
      add([i, echo, witness], unlike);
    });
  }
  const head = `x ${sizes.length} ${Math.max(...sizes)} ${functions.length} ${top}`;
  return [head, sizes.join(' '), ...functions, ''].join('\n');
}

export interface Answer {
  /** Cost of the optimum; undefined where none was proved in time, or there is none. */
  readonly optimum: number | undefined;
  /** Proved that nothing may be. */
  readonly hasNone: boolean;
  /** Its own count of solving time, reading left out. */
  readonly seconds: number | undefined;
}

/** Whether toulbar2 is installed. */
export const isInstalled = (): boolean => spawnSync('toulbar2', ['--help']).error === undefined;

/** Asks toulbar2 for the one best; `below` is a cost that it may take as known to be beaten. */
export function asked(
  text: string,
  { limitSeconds = 20, below }: { limitSeconds?: number; below?: number } = {},
): Answer {
  const folder = mkdtempSync(join(tmpdir(), 'ranking-'));
  try {
    const file = join(folder, 'network.wcsp');
    writeFileSync(file, text);
    const bound = below === undefined ? [] : [`-ub=${below}`];
    const { stdout } = spawnSync('toulbar2', [file, `-timer=${limitSeconds}`, ...bound], {
      encoding: 'utf8',
      maxBuffer: 1 << 28,
      timeout: 1000 * (limitSeconds + 30),
    });
    const told = /Optimum: (\d+) in .*? and ([\d.e-]+) seconds/.exec(stdout);
    const hasNone = /No solution in/.test(stdout);
    if (told === null) return { optimum: undefined, hasNone, seconds: undefined };
    return { optimum: Number(told[1]), hasNone: false, seconds: Number(told[2]) };
  } finally {
    rmSync(folder, { recursive: true });
  }
}
