/**
 * The code, read by a decoder that is not ours (jsQR) from the path as it would be drawn; quiet zone
 * as ISO/IEC 18004 has it, four modules on every side (from memory).
 */
import jsqr from 'jsqr';
import { describe, expect, it } from 'vitest';
import { type Code, codeOf, longestCode, quietZone } from '../../../src/app/ask/code.ts';

/** The dark modules of a path made of runs, row by row. */
function modules({ side, path }: Code): boolean[][] {
  const grid = Array.from({ length: side }, () => new Array<boolean>(side).fill(false));
  let drawn = '';
  for (const [run, x, y, wide] of path.matchAll(/M(\d+) (\d+)h(\d+)v1h-\3z/g)) {
    drawn += run;
    for (let at = 0; at < Number(wide); at++) grid[Number(y)]![Number(x) + at] = true;
  }
  // Nothing in the path but runs.
  expect(drawn).toBe(path);
  return grid;
}

/** The grid as pixels, `scale` to a module. */
function pixelsOf(grid: readonly (readonly boolean[])[], scale: number): Uint8ClampedArray {
  const side = grid.length * scale;
  const pixels = new Uint8ClampedArray(side * side * 4).fill(255);
  for (let y = 0; y < side; y++) {
    for (let x = 0; x < side; x++) {
      if (grid[Math.floor(y / scale)]![Math.floor(x / scale)]) {
        pixels.fill(0, (y * side + x) * 4, (y * side + x) * 4 + 3);
      }
    }
  }
  return pixels;
}

const address = (characters: number): string =>
  `https://cars.example/round.html#1${'Aa0_-zZ9'.repeat(characters)}`.slice(0, characters);

describe('a code to scan', () => {
  it.each([60, 300, 640, 1100, longestCode])('of %i characters reads as its address', (length) => {
    const code = codeOf(address(length))!;
    const grid = modules(code);
    const scale = 4;
    const read = jsqr(pixelsOf(grid, scale), code.side * scale, code.side * scale);
    expect(read?.data).toBe(address(length));
  });

  it('has four light modules around it, and a dark corner within', () => {
    const code = codeOf(address(640))!;
    const grid = modules(code);
    expect(quietZone).toBe(4);
    for (const [y, row] of grid.entries()) {
      for (const [x, isDark] of row.entries()) {
        const edge = Math.min(x, y, code.side - 1 - x, code.side - 1 - y);
        if (edge < 4) expect(isDark).toBe(false);
      }
    }
    expect(grid[4]![4]).toBe(true);
    // Sides of codes are 21 modules and four more for each version.
    expect((code.side - 8 - 21) % 4).toBe(0);
  });

  it('is not drawn for more than can be scanned, counted in bytes', () => {
    expect(codeOf(address(longestCode + 1))).toBeUndefined();
    expect(codeOf(`https://cars.example/${'é'.repeat(longestCode / 2)}`)).toBeUndefined();
  });
});
