/** Rings about what is pointed at, held against distances measured one by one (brute force). */
import { describe, expect, it } from 'vitest';
import { ringsOf } from '../../../src/stage/view/ring.ts';

const side = 40;
/** Part 3 is a block in the middle of part 1, which covers a larger block; nothing beyond. */
const partAt = (x: number, y: number): number => {
  if (x >= 16 && x < 24 && y >= 12 && y < 20) return 3;
  return x >= 6 && x < 34 && y >= 5 && y < 30 ? 1 : 0;
};
/** As the renderer reads it back: bottom row first, red is part + 1. */
const ids = new Uint8Array(side * side * 4);
for (let y = 0; y < side; y++) {
  for (let x = 0; x < side; x++) ids[((side - 1 - y) * side + x) * 4] = partAt(x, y);
}
const none: ReadonlySet<number> = new Set();
const third: ReadonlySet<number> = new Set([2]);

const distanceTo = (part: number, x: number, y: number): number => {
  let nearest = Number.POSITIVE_INFINITY;
  for (let j = 0; j < side; j++) {
    for (let i = 0; i < side; i++) {
      if (partAt(i, j) === part) nearest = Math.min(nearest, Math.hypot(i - x, j - y));
    }
  }
  return nearest;
};
const everywhere = (look: (x: number, y: number) => void): void => {
  for (let y = 0; y < side; y++) for (let x = 0; x < side; x++) look(x, y);
};

describe('rings', () => {
  it('lie about a lit part and never on it, light within dark', () => {
    const rings = ringsOf(ids, side, side, { lit: third, marked: none, isGentle: true }, 1);
    everywhere((x, y) => {
      const [grey, alpha] = [rings[(y * side + x) * 4]!, rings[(y * side + x) * 4 + 3]!];
      const distance = distanceTo(3, x, y);
      if (distance === 0 || distance > 3.7) expect(alpha).toBe(0);
      if (distance > 0 && distance <= 1) expect([grey, alpha]).toEqual([255, 255]);
      if (distance >= 2.3 && distance <= 2.6) expect([grey, alpha]).toEqual([0, 255]);
    });
  });

  it('are as wide on a finer screen as on a coarse one', () => {
    const rings = ringsOf(ids, side, side, { lit: third, marked: none, isGentle: true }, 2);
    everywhere((x, y) => {
      const alpha = rings[(y * side + x) * 4 + 3]!;
      const distance = distanceTo(3, x, y);
      if (distance > 0 && distance <= 6.2) expect(alpha).toBeGreaterThan(0);
      if (distance > 6.8) expect(alpha).toBe(0);
    });
  });

  it('let the rest of the car sink where only lit parts should count, and nothing else', () => {
    const rings = ringsOf(ids, side, side, { lit: third, marked: none, isGentle: false }, 1);
    everywhere((x, y) => {
      const [grey, alpha] = [rings[(y * side + x) * 4]!, rings[(y * side + x) * 4 + 3]!];
      if (distanceTo(3, x, y) <= 3.7) return;
      if (partAt(x, y) === 1) {
        expect(grey).toBe(166);
        expect(alpha).toBeGreaterThan(100);
      } else expect(alpha).toBe(0);
    });
  });

  it('draw marked parts round with a dashed line of light and dark', () => {
    const rings = ringsOf(ids, side, side, { lit: none, marked: third, isGentle: true }, 1);
    const greys = new Set<number>();
    everywhere((x, y) => {
      const distance = distanceTo(3, x, y);
      const at = (y * side + x) * 4;
      if (distance > 0 && distance <= 1) greys.add(rings[at]!);
      if (distance === 0 || distance > 2.2) expect(rings[at + 3]).toBe(0);
    });
    expect([...greys].sort()).toEqual([0, 255]);
  });

  it('are nothing where nothing is pointed out', () => {
    const rings = ringsOf(ids, side, side, { lit: none, marked: none, isGentle: false }, 1);
    expect(rings.every((value) => value === 0)).toBe(true);
  });
});
