/**
 * How many device pixels to a CSS pixel? As many as the screen has at rest; while things move, as
 * many as this machine can draw smoothly. Ratios, not milliseconds of one machine: each picture's
 * time says what the next may cost.
 */
export interface Fineness {
  /** Pixels while moving. */
  readonly moving: number;
  /** Pixels at rest. */
  readonly still: number;
}

/** A picture may take this long while things move, ms; a twentieth of a second still looks smooth. */
const patienceMs = 50;
const coarsest = 0.4;
/** More pixels than this in one canvas help nobody and strain phones. */
const mostPixels = 7_000_000;

/** To begin with: the screen's own fineness, as far as the canvas allows. */
export function finestFor(width: number, height: number, devicePixels: number): Fineness {
  const allowed = Math.sqrt(mostPixels / Math.max(1, width * height));
  const still = Math.max(coarsest, Math.min(devicePixels, 2.5, allowed));
  return { moving: still, still };
}

/** A machine that takes longer than this for a moving picture, ms, does without smooth edges. */
const smoothMs = 24;

/** Whether edges stay smooth while moving, after a picture that took `spentMs`; first to go. */
export const staysSmooth = (isSmooth: boolean, spentMs: number): boolean =>
  isSmooth && spentMs <= smoothMs;

/** After a picture that took `spentMs` while moving: coarser where it dragged, finer where it flew. */
export function adapted(fineness: Fineness, spentMs: number): Fineness {
  const { moving, still } = fineness;
  if (spentMs > patienceMs) {
    // Time goes with the number of pixels, the square of fineness.
    const wanted = moving * Math.max(0.6, Math.sqrt(patienceMs / spentMs));
    return { still, moving: Math.max(Math.min(coarsest, still), wanted) };
  }
  if (spentMs < patienceMs / 2.5 && moving < still) {
    return { still, moving: Math.min(still, moving * 1.1) };
  }
  return fineness;
}
