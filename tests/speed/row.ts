/** One figure of a speed report: a ratio against something measured in the same run. */
export interface Row {
  readonly id: string;
  /** The number that is limited. */
  readonly value: number;
  readonly unit: string;
  /** What it is a ratio against. */
  readonly against: string;
  readonly note: string;
}

/**
 * Median seconds per call of two pieces of work, run turn about so that a slow moment of the
 * machine falls on both; each sample runs for at least `sampleMs`.
 */
export function paired(
  one: () => void,
  other: () => void,
  { samples = 9, sampleMs = 60 }: { samples?: number; sampleMs?: number } = {},
): { one: number; other: number; ratio: number } {
  const work = [one, other];
  const calls = work.map((run) => callsFor(run, sampleMs));
  const times: number[][] = [[], []];
  for (let sample = 0; sample < samples; sample++) {
    work.forEach((run, side) => {
      const start = performance.now();
      for (let k = 0; k < calls[side]!; k++) run();
      times[side]!.push((performance.now() - start) / calls[side]! / 1000);
    });
  }
  const ratios = times[0]!.map((time, k) => times[1]![k]! / time);
  return { one: median(times[0]!), other: median(times[1]!), ratio: median(ratios) };
}

function callsFor(run: () => void, sampleMs: number): number {
  let calls = 1;
  for (;;) {
    const start = performance.now();
    for (let k = 0; k < calls; k++) run();
    const spent = performance.now() - start;
    if (spent >= sampleMs) return calls;
    calls = Math.ceil(
      calls * Math.min(10, Math.max(1.5, (1.2 * sampleMs) / Math.max(spent, 0.01))),
    );
  }
}

export function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[sorted.length >> 1]!;
}

/** Seconds as microseconds or milliseconds, for notes only. */
export const spent = (seconds: number): string =>
  seconds < 1e-3 ? `${(seconds * 1e6).toFixed(1)} µs` : `${(seconds * 1e3).toFixed(1)} ms`;
