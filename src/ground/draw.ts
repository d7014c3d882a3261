/**
 * Seeded chance: the same seed gives the same draws everywhere, so a closeness figure or a failing
 * test can be repeated. Generator: sfc32 by C. Doty-Humphrey, 128-bit state, as specified in
 * PractRand; normals by the Box–Muller transform.
 */
export interface Draw {
  /** Uniform in [0, 1), 32 bits of resolution. */
  uniform(): number;
  /** Whole number in [0, count). */
  below(count: number): number;
  /** Standard normal. */
  normal(): number;
}

/**
 * A seed for a name: the same name has the same draws, whatever else is drawn. FNV-1a of its UTF-16
 * code units (constants of the published 32-bit hash) below, the given whole number under 2^20 above.
 */
export function seedFor(name: string, seed: number): number {
  let hash = 0x811c9dc5;
  for (let at = 0; at < name.length; at++) {
    hash = Math.imul(hash ^ name.charCodeAt(at), 0x01000193);
  }
  return seed * 2 ** 32 + (hash >>> 0);
}

/** A stream of draws from a whole-number seed. */
export function drawFrom(seed: number): Draw {
  let a = 0;
  let b = seed | 0;
  let c = Math.floor(seed / 2 ** 32) | 0;
  let counter = 1;
  const next = (): number => {
    const sum = (((a + b) | 0) + counter) | 0;
    counter = (counter + 1) | 0;
    a = b ^ (b >>> 9);
    b = (c + (c << 3)) | 0;
    c = (c << 21) | (c >>> 11);
    c = (c + sum) | 0;
    return sum >>> 0;
  };
  for (let warmUp = 0; warmUp < 12; warmUp++) next();

  let spare: number | undefined;
  const uniform = (): number => next() / 2 ** 32;
  return {
    uniform,
    below: (count) => Math.floor(uniform() * count),
    normal: () => {
      if (spare !== undefined) {
        const value = spare;
        spare = undefined;
        return value;
      }
      const radius = Math.sqrt(-2 * Math.log(1 - uniform()));
      const angle = 2 * Math.PI * uniform();
      spare = radius * Math.sin(angle);
      return radius * Math.cos(angle);
    },
  };
}
