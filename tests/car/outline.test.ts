/** Do drawings show the parts where they are? Against plain figures (derived) and the id-buffer. */
import { describe, expect, it } from 'vitest';
import { areaOf, chainsOf, levelRings, ringsOf, thinned } from '../../src/car/contour.ts';
import { traceView, views } from '../../src/car/outline.ts';
import { drawFrom } from '../../src/ground/draw.ts';
import { box, meshFrom, quad } from './shape.ts';

const size = 120;
const pictureOf = (labelAt: (x: number, y: number) => number): Int16Array =>
  Int16Array.from({ length: size * size }, (_, at) =>
    labelAt((at % size) + 0.5, Math.floor(at / size) + 0.5),
  );

describe('contours', () => {
  const disc = pictureOf((x, y) => (Math.hypot(x - 60, y - 60) < 40 ? 0 : -1));

  it('draws a disc of radius 40 with its area and few points', () => {
    const [ring] = ringsOf(chainsOf(disc, size, size, 0.4)).get(0)!;
    // Derived: πr²; averaging staircases and thinning by 0.4 pixel cost about a per cent.
    expect(areaOf(ring!) / (Math.PI * 1600)).toBeCloseTo(1, 1);
    expect(Math.abs(areaOf(ring!) / (Math.PI * 1600) - 1)).toBeLessThan(0.02);
    expect(ring!.length).toBeLessThan(48);
  });

  it('gives neighbours the same points along their common border, so that nothing shines through', () => {
    const halves = pictureOf((x, y) =>
      Math.hypot(x - 60, y - 60) >= 40 ? -1 : x + 8 * Math.sin(y / 9) < 60 ? 0 : 1,
    );
    const rings = ringsOf(chainsOf(halves, size, size, 0.4));
    const [left, right] = [rings.get(0)![0]!, rings.get(1)![0]!];
    const shared = left.filter((point) => right.some((other) => String(other) === String(point)));
    expect(shared.length).toBeGreaterThan(5);
    const whole = ringsOf(chainsOf(disc, size, size, 0.4)).get(0)![0]!;
    // Derived: two halves that neither gap nor overlap add up to the disc they divide.
    expect(Math.abs((areaOf(left) + areaOf(right)) / areaOf(whole) - 1)).toBeLessThan(0.01);
  });

  it('closes every ring and keeps every area in random patchworks of five labels, seed 3', () => {
    const draw = drawFrom(3);
    const spots = Array.from({ length: 14 }, () => [draw.below(size), draw.below(size)] as const);
    const patchwork = pictureOf((x, y) => {
      const off = spots.map(([sx, sy]) => Math.hypot(sx - x, sy - y));
      return (off.indexOf(Math.min(...off)) % 5) - 1;
    });
    const rings = ringsOf(chainsOf(patchwork, size, size, 0.4));
    for (const label of [0, 1, 2, 3]) {
      // Oracle: the number of pixels with that label.
      const pixels = patchwork.filter((one) => one === label).length;
      const area = rings.get(label)!.reduce((sum, ring) => sum + areaOf(ring), 0);
      expect(Math.abs(area - pixels)).toBeLessThan(0.04 * pixels + 20);
    }
  });

  it('finds the level line of a cone at the radius where it has that height', () => {
    const cone = Float32Array.from({ length: size * size }, (_, at) =>
      Math.max(0, 1 - Math.hypot((at % size) + 0.5 - 60, Math.floor(at / size) + 0.5 - 60) / 50),
    );
    const rings = levelRings(cone, size, size, 0.4);
    expect(rings).toHaveLength(1);
    // Derived: height 0.4 lies at radius 50 · 0.6 = 30.
    for (const [x, y] of rings[0]!) expect(Math.hypot(x - 60, y - 60)).toBeCloseTo(30, 1);
  });

  it('thins a straight run of points to its two ends', () => {
    const line = Array.from({ length: 50 }, (_, k) => [k, 2 * k] as const);
    expect(thinned(line, false, 0.1)).toEqual([line[0], line[49]]);
  });
});

describe('a drawing', () => {
  const mesh = meshFrom([
    box('body', [-800, 200, -2000], [800, 900, 2000]),
    ...[-1300, 1300].flatMap((z) =>
      [-760, 760].map((x) =>
        box('tyres', [x - 100, 0, z - 320], [x + 100, 640, z + 320], {
          group: 'wheels',
          role: 'given',
        }),
      ),
    ),
    // Leaning at 45°, it mirrors what is overhead to an eye at its side.
    quad('shoulder', [
      [850, 900, -1500],
      [650, 1100, -1500],
      [650, 1100, 1500],
      [850, 900, 1500],
    ]),
    box('windscreen', [-600, 900, 300], [600, 1250, 310], { isGlass: true, role: 'given' }),
  ]);
  const side = views.find(({ id }) => id === 'side')!;
  const drawn = traceView(mesh, { ...side, widthPx: 500 });

  it('has one path per part that a page can paint and point at', () => {
    const parts = [...drawn.matchAll(/data-part="([^"]+)"/g)].map((match) => match[1]);
    expect(parts.sort()).toEqual(['body', 'shoulder', 'tyres', 'windscreen']);
    expect(drawn).toContain('fill="var(--paint-body, #808080)"');
  });

  it('mirrors the lamp overhead on what leans toward it, and not on upright sides', () => {
    expect(drawn).toContain('class="gloss" pointer-events="none" fill="var(--gloss-shoulder');
    expect(drawn).not.toContain('--gloss-body');
  });

  it('can stand on a page many times: no ids, no script, no links', () => {
    expect(drawn).not.toMatch(/\sid=|<script|href|url\(/);
  });

  it('is the same whenever it is drawn', () => {
    expect(traceView(mesh, { ...side, widthPx: 500 })).toBe(drawn);
  });

  it('says so where the car has nothing that the view frames', () => {
    const cabin = views.find(({ id }) => id === 'cabin')!;
    expect(() => traceView(mesh, cabin)).toThrow(/no cabin/);
  });
});
