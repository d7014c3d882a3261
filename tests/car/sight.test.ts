/** What is seen of plain bodies, against geometry (derived): areas, hiding, widths, instances. */
import * as v from 'valibot';
import { describe, expect, it } from 'vitest';
import { rasterise } from '../../src/car/raster.ts';
import { sightOf } from '../../src/car/sight.ts';
import { sightTableSchema } from '../../src/car/table.ts';
import { cameraOf, looks } from '../../src/car/viewpoint.ts';
import { box, meshFrom, quad } from './shape.ts';

const about = { car: 'block', name: 'Block', meshSha256: '00' };
const shown = (table: ReturnType<typeof sightOf>, part: string, look: string): number => {
  const index = table.looks.findIndex(({ id }) => id === look);
  const areas = table.parts.find(({ id }) => id === part)!.areaMm2;
  return Object.values(areas).reduce((sum, ofLooks) => sum + ofLooks[index]!, 0);
};

/** A block the size of a car, with a plate standing off its left side. */
const block = box('body', [-800, 0, -2000], [800, 1200, 2000]);

describe('areas', () => {
  it('shows a flat plate seen square on at its own size', () => {
    const upright = meshFrom([
      quad('body', [
        [0, 0, -1500],
        [0, 0, 1500],
        [0, 1000, 1500],
        [0, 1000, -1500],
      ]),
    ]);
    const table = sightOf(upright, about);
    // Derived: 3 m × 1 m, foreshortened by cos 8° of the flank look; half a pixel of edge each way.
    const expected = 3000 * 1000 * Math.cos((8 * Math.PI) / 180);
    expect(Math.abs(shown(table, 'body', 'left') / expected - 1)).toBeLessThan(0.015);
    expect(Math.abs(shown(table, 'body', 'right') / expected - 1)).toBeLessThan(0.015);
    // Derived: turned 55° from square on and 20° up it keeps sin 35° · cos 20° = 0.54 of its size;
    // perspective over a car's length moves that by a few per cent.
    expect(shown(table, 'body', 'front-left') / 3e6).toBeCloseTo(0.54, 1);
  });

  it('leaves no hole and no overlap where triangles share an edge', () => {
    // Oracle: a plate cut into 200 slanted triangles covers the same pixels as one cut into two.
    const fan = Array.from({ length: 200 }, (_, k) => {
      const at = (index: number): readonly [number, number, number] => [
        0,
        500 + 480 * Math.sin((index * Math.PI) / 100),
        1400 * Math.cos((index * Math.PI) / 100),
      ];
      return [[0, 500, 0], at(k), at(k + 1)] as const;
    });
    const mesh = meshFrom([{ part: 'body', triangles: fan }]);
    const camera = cameraOf(mesh, looks.find(({ id }) => id === 'left')!);
    const { triangle } = rasterise(mesh, camera, 400, 400, () => true);
    for (let y = 0; y < 400; y++) {
      const row = [...triangle.subarray(y * 400, y * 400 + 400)];
      const [first, last] = [row.findIndex((t) => t >= 0), row.findLastIndex((t) => t >= 0)];
      if (first >= 0) expect(row.slice(first, last + 1).includes(-1)).toBe(false);
    }
  });

  it('hides what stands behind and sees through glass', () => {
    const plate = (part: string, x: number, label = {}) =>
      quad(
        part,
        [
          [x, 300, -400],
          [x, 300, 400],
          [x, 900, 400],
          [x, 900, -400],
        ],
        label,
      );
    const behind = sightOf(meshFrom([block, plate('badge', 700)]), about);
    expect(shown(behind, 'badge', 'left')).toBe(0);
    const through = sightOf(
      meshFrom([block, plate('badge', 805), plate('glass', 900, { isGlass: true, role: 'given' })]),
      about,
    );
    expect(shown(through, 'badge', 'left')).toBeGreaterThan(400_000);
    expect(shown(through, 'glass', 'left')).toBe(0);
    expect(shown(through, 'badge', 'right')).toBe(0);
  });
});

describe('smallest visible dimension', () => {
  const ribbon = (part: string, z: number, width: number) =>
    box(part, [800, 100, z - width / 2], [802, 1100, z + width / 2]);

  /** A flat ribbon just off the block's left side, leaning by some degrees. */
  const leaning = (width: number, degrees: number) => {
    const [c, s] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
    const at = (along: number, across: number): readonly [number, number, number] => [
      802,
      600 + along * c - across * s,
      along * s + across * c,
    ];
    return quad('belts', [
      at(-450, -width / 2),
      at(450, -width / 2),
      at(450, width / 2),
      at(-450, width / 2),
    ]);
  };
  const widthRead = (degrees: number): number => {
    const table = sightOf(meshFrom([block, leaning(46, degrees)]), about);
    expect(table.parts.find(({ id }) => id === 'body')!.thicknessMm).toBeNull();
    return table.parts.find(({ id }) => id === 'belts')!.thicknessMm!;
  };

  it('reads a 46 mm ribbon that leans as a belt does within six per cent', () => {
    // Derived: the ribbon is 46 mm wide where it is seen square on.
    for (const degrees of [12, 25])
      expect(Math.abs(widthRead(degrees) / 46 - 1)).toBeLessThan(0.06);
  });

  it('reads an upright 46 mm ribbon within one pixel, the worst the picture grid can do', () => {
    // Derived: at 8.8 m a pixel of a 640-pixel look with a 28° field is 2 · 8800 · tan 14° / 640.
    const pixelMm = (2 * 8800 * Math.tan((14 * Math.PI) / 180)) / 640;
    expect(Math.abs(widthRead(0) - 46)).toBeLessThan(pixelMm);
  });

  it('frames what is too small for any look closer: a 12 mm ribbon', () => {
    const short = box('piping', [800, 400, -6], [802, 700, 6]);
    const table = sightOf(meshFrom([block, short]), about);
    expect(
      Math.abs(table.parts.find(({ id }) => id === 'piping')!.thicknessMm! / 12 - 1),
    ).toBeLessThan(0.12);
  });

  it('does not merge two ribbons of one part that lie against each other as two nodes', () => {
    const pair = [ribbon('belts', 0, 46), ribbon('belts', 46, 46)];
    const table = sightOf(meshFrom([block, ...pair]), about);
    expect(table.parts.find(({ id }) => id === 'belts')!.thicknessMm!).toBeLessThan(50);
  });
});

describe('the table', () => {
  it('holds each border once and follows its schema', () => {
    const table = sightOf(
      meshFrom([block, box('mirrors', [800, 700, 300], [900, 800, 500])]),
      about,
    );
    expect(v.safeParse(sightTableSchema, JSON.parse(JSON.stringify(table))).success).toBe(true);
    expect(table.borders.map(({ a, b }) => [a, b])).toEqual([['body', 'mirrors']]);
    expect(table.looks.filter(({ isWhole }) => isWhole)).toHaveLength(9);
  });
});
