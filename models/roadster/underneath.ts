/**
 * The floor pan and the wheel wells, left half: they close the car from below, dark and simple, as
 * they are never seen close. Metres, car coordinates. Our own judgement.
 */
import { Solid } from '../mesh/solid.ts';
import {
  archRadius,
  axles,
  lowerEdge,
  noseLine,
  placed,
  tailLine,
  wheelCentreHeight,
} from './lines.ts';
import { sideAt } from './surface.ts';

/** Wells and pan. */
export function underneath(): Solid {
  const solid = new Solid(30);
  const inner = 0.47;
  const high = 0.012;
  for (const axle of [axles.front, axles.rear]) {
    const reach = archRadius + 0.02;
    const rows = Array.from({ length: 13 }, (_, k) => {
      const angle = Math.PI * (1 - (k - 1) / 10);
      const isFoot = k === 0 || k === 12;
      const station = axle + reach * (isFoot ? (k === 0 ? -1 : 1) : Math.cos(angle));
      const y = isFoot ? lowerEdge(axle) : wheelCentreHeight + reach * Math.sin(angle);
      const skirt = sideAt(station, Math.max(y, 0.2)) - 0.02;
      return [placed(station, y, skirt), placed(station, y, inner)];
    });
    solid.grid('underbody', rows);
    const hub = placed(axle, lowerEdge(axle), inner);
    rows.slice(1).forEach((row, k) => {
      solid.triangle('underbody', hub, rows[k]![1]!, row[1]!);
    });
  }
  solid.facingFrom(0, ([x, , z]) => [
    x + 0.2,
    wheelCentreHeight,
    2.05 - (z > 2.05 - 2 ? axles.front : axles.rear) + (x < inner + 0.01 ? z - z : 0),
  ]);
  const from = solid.triangles.length;
  const inWell = (station: number): boolean =>
    [axles.front, axles.rear].some((axle) => Math.abs(station - axle) < archRadius + 0.03);
  const stations = [
    0.1, 0.16, 0.28, 0.427, 0.429, 1.171, 1.173, 2, 2.897, 2.899, 3.641, 3.643, 3.8, 3.9, 4,
  ];
  const rim = stations.map((station) => {
    const y = lowerEdge(station) + high;
    // Inside the nose and the tail the pan stops short of the skin.
    const bowed = Math.min((station - noseLine(y)) / 0.3, (tailLine(y) - station) / 0.2);
    const end = 0.85 * Math.sqrt(Math.max(0, bowed - 0.04));
    return [
      placed(station, y, 0),
      placed(station, y, inWell(station) ? inner : Math.min(end, sideAt(station, y) - 0.03)),
    ];
  });
  solid.grid('underbody', rim);
  return solid.facingFrom(from, ([x, y, z]) => [x, y - 1, z]);
}
