/**
 * Cells of a picture. Checked against what a picture for asking others must be (equal sizes, in
 * reading order, nothing overlapping or cut), and against a brute search of all full grids.
 */
import { describe, expect, it } from 'vitest';
import { type Box, boxOf, cellsFor, gridFor } from '../../../src/app/picture/layout.ts';

const sheets = [
  { width: 3840, height: 2160 },
  { width: 2160, height: 2160 },
  { width: 1080, height: 1920 },
];
const shapes = [1.2, 1.75, 3.2];
const cases = sheets.flatMap((sheet) =>
  shapes.flatMap((aspect) => [1, 2, 3, 4].map((count) => ({ ...sheet, aspect, count }))),
);

const overlap = (one: Box, other: Box): boolean =>
  one.x < other.x + other.width - 0.01 &&
  other.x < one.x + one.width - 0.01 &&
  one.y < other.y + other.height - 0.01 &&
  other.y < one.y + one.height - 0.01;

describe('cells of a picture', () => {
  it.each(cases)(
    '$count cars of $aspect on $width × $height',
    ({ count, width, height, aspect }) => {
      const cells = cellsFor(count, width, height, aspect);
      expect(cells).toHaveLength(count);
      const boxes = cells.flatMap(({ head, car }) => [head, car]);
      for (const box of boxes) {
        expect(box.x).toBeGreaterThanOrEqual(0);
        expect(box.y).toBeGreaterThanOrEqual(0);
        expect(box.x + box.width).toBeLessThanOrEqual(width);
        // The line at the foot, a twentieth of the shorter side at least, stays free.
        expect(box.y + box.height).toBeLessThanOrEqual(height - 0.05 * Math.min(width, height));
        expect(box.width).toBeGreaterThan(100);
      }
      for (const [at, box] of boxes.entries()) {
        for (const other of boxes.slice(at + 1)) expect(overlap(box, other)).toBe(false);
      }
      for (const { car } of cells) {
        expect(car.width).toBeCloseTo(cells[0]!.car.width, 6);
        expect(car.width / car.height).toBeCloseTo(aspect, 6);
      }
      for (const [at, { car }] of cells.entries()) {
        const next = cells[at + 1]?.car;
        if (next === undefined) continue;
        expect(next.y > car.y + 1 || (Math.abs(next.y - car.y) < 1 && next.x > car.x)).toBe(true);
      }
    },
  );

  it('three cars stand side by side on a wide sheet', () => {
    const tops = cellsFor(3, 3840, 2160, 1.75).map(({ car }) => car.y);
    expect(new Set(tops).size).toBe(1);
  });
});

describe('the grid that fills a screen', () => {
  const brute = (count: number, width: number, height: number, head: number): number => {
    let best = 0;
    for (let columns = 1; columns <= count; columns++) {
      for (let rows = 1; rows <= count; rows++) {
        if (columns * rows < count || (count <= 4 && columns * rows !== count)) continue;
        const car = Math.min(width / columns, (height / rows - head) * 1.75);
        best = Math.max(best, car);
      }
    }
    return best;
  };
  it.each([
    [1440, 900],
    [1920, 1080],
    [390, 844],
    [844, 390],
  ])('no other has larger cars at %i × %i', (width, height) => {
    for (let count = 1; count <= 9; count++) {
      const { columns, rows } = gridFor(count, width, height, 52, 1.75);
      expect(columns * rows).toBeGreaterThanOrEqual(count);
      const car = Math.min(width / columns, (height / rows - 52) * 1.75);
      expect(car).toBeCloseTo(brute(count, width, height, 52), 6);
    }
  });
  it('three stand side by side on a desk and one above the other on a phone', () => {
    expect(gridFor(3, 1440, 900, 52, 1.75)).toEqual({ columns: 3, rows: 1 });
    expect(gridFor(3, 390, 844, 52, 1.75)).toEqual({ columns: 1, rows: 3 });
  });
});

describe('the box about what is drawn', () => {
  it('holds every pixel that is opaque enough and no row or column more', () => {
    const rgba = new Uint8Array(8 * 5 * 4);
    const set = (x: number, y: number, alpha: number): void => {
      rgba[(y * 8 + x) * 4 + 3] = alpha;
    };
    set(2, 1, 255);
    set(5, 3, 20);
    set(7, 4, 5);
    expect(boxOf(rgba, 8, 5, 6)).toEqual({ x: 2, y: 1, width: 4, height: 3 });
    expect(boxOf(rgba, 8, 5, 100)).toEqual({ x: 2, y: 1, width: 1, height: 1 });
  });
  it('is nothing where nothing is drawn', () => {
    expect(boxOf(new Uint8Array(16), 2, 2, 1)).toBeUndefined();
  });
});
