/**
 * The ray grid that samples the left half of the skin: rays leave a box inside the car squarely
 * from its side, top, nose and tail, and fan out around its edges, so cells stay near square all
 * over. Out: a shell of one part, `body`. Metres.
 */
import { cross, dot, normalize, subtract, type Vector3 } from '../../src/ground/vector.ts';
import { Shell } from '../mesh/shell.ts';
import { axles, placed } from './lines.ts';
import { skin } from './surface.ts';

const core = { front: 0.42, rear: 3.5, low: 0.11, high: 0.52, out: 0.48 } as const;

// Rows, from the sill up the side, around the shoulder and in to the middle.
interface Row {
  readonly y: number;
  readonly x: number;
  /** 0 straight out to the left, π/2 straight up. */
  readonly turn: number;
}
const spread = (from: number, to: number, steps: number): number[] =>
  Array.from({ length: steps + 1 }, (_, k) => from + ((to - from) * k) / steps);

const sideRows: Row[] = spread(core.low, core.high, 6).map((y) => ({ y, x: core.out, turn: 0 }));
const shoulderRows: Row[] = spread(0, Math.PI / 2, 8)
  .slice(1, -1)
  .map((turn) => ({ y: core.high, x: core.out, turn }));
const topRows: Row[] = [0.48, 0.4, 0.32, 0.252, 0.157, 0.062, 0].map((x) => ({
  y: core.high,
  x,
  turn: Math.PI / 2,
}));
const rows = [...sideRows, ...shoulderRows, ...topRows];

// Columns along the car: closer over the wheels, where the flares bend.
function columns(): number[] {
  const gaps: number[] = [core.front];
  for (let at = core.front; at < core.rear - 0.03; ) {
    const near = Math.min(Math.abs(at - axles.front), Math.abs(at - axles.rear));
    at += near < 0.47 ? 0.11 : 0.16;
    gaps.push(Math.min(at, core.rear));
  }
  gaps[gaps.length - 1] = core.rear;
  return gaps;
}

/** The uncut left half of the car. */
export function halfShell(): Shell {
  const shell = new Shell(skin);
  const known = new Map<string, number>();
  const vertex = (from: Vector3, along: Vector3): number => {
    const key = [...from, ...along].map((value) => Math.round(value * 1e6)).join();
    const index = known.get(key) ?? shell.vertex({ from, along });
    known.set(key, index);
    return index;
  };
  // `lean` turns a row's ray from square (0) to straight ahead (π/2) or back (−π/2).
  const leaning = (station: number, row: Row, lean: number): number => {
    const square = Math.cos(lean);
    return vertex(
      placed(station, row.y, row.x),
      normalize([square * Math.cos(row.turn), square * Math.sin(row.turn), Math.sin(lean)]),
    );
  };
  const face = (a: number, b: number, c: number): void => {
    if (a === b || b === c || a === c) return;
    const [p, q, r] = [shell.points[a]!, shell.points[b]!, shell.points[c]!];
    const isOut = dot(cross(subtract(q, p), subtract(r, p)), shell.rays[a]!.along) > 0;
    shell.cells.push({ corners: isOut ? [a, b, c] : [a, c, b], part: 'body' });
  };
  // Alternating diagonals keep the triangles from all leaning one way.
  const quad = (a: number, b: number, c: number, d: number, isOdd: boolean): void => {
    if (isOdd) {
      face(a, b, c);
      face(a, c, d);
    } else {
      face(a, b, d);
      face(b, c, d);
    }
  };
  const fan = spread(0, Math.PI / 2, 5);
  // Closer together where the tail's lip turns over; the core ends far enough ahead of it for its
  // rays to see under the lip.
  const tailFan = [0, 0.25, 0.5, 0.72, 0.9, 1.0, 1.1, 1.26, Math.PI / 2];
  const stations: [station: number, lean: number][] = [
    ...[...fan].reverse().map((lean): [number, number] => [core.front, lean]),
    ...columns()
      .slice(1, -1)
      .map((station): [number, number] => [station, 0]),
    ...tailFan.map((lean): [number, number] => [core.rear, -lean]),
  ];
  const net = stations.map(([station, lean]) => rows.map((row) => leaning(station, row, lean)));
  for (let i = 0; i + 1 < net.length; i++) {
    for (let j = 0; j + 1 < rows.length; j++) {
      const [near, far] = [net[i]!, net[i + 1]!];
      quad(near[j]!, near[j + 1]!, far[j + 1]!, far[j]!, (i + j) % 2 === 0);
    }
  }
  // Nose and tail: a net between the side rows and the top rows.
  for (const [station, ahead] of [
    [core.front, 1],
    [core.rear, -1],
  ] as const) {
    const end = sideRows.map(({ y }) =>
      topRows.map(({ x }) => vertex(placed(station, y, x), [0, 0, ahead])),
    );
    for (let i = 0; i + 1 < end.length; i++) {
      for (let j = 0; j + 1 < topRows.length; j++) {
        const [below, above] = [end[i]!, end[i + 1]!];
        const loop = [below[j]!, below[j + 1]!, above[j + 1]!, above[j]!] as const;
        quad(loop[0], loop[1], loop[2], loop[3], (i + j) % 2 === 0);
      }
    }
  }
  return shell;
}
