/**
 * Where the skin is cut, scored and painted: each opening and panel drawn in the view it is seen
 * in. In: a point on the skin. Out: signed distance in that view, metres, below 0 inside.
 * Masks (`Math.max` with a plane) keep a view from cutting the far side of the car. All numbers
 * are our own judgement, by eye.
 */
import { bothSides, curved, type Flat, rounded } from '../mesh/outline.ts';
import type { Outline } from '../mesh/shell.ts';
import { archRadius, axles, lowerEdge, stationOf, wheelCentreHeight } from './lines.ts';
import { rolledMaximum } from './surface.ts';

const inPlan =
  (distance: (x: number, station: number) => number): Outline =>
  (point) =>
    distance(point[0], stationOf(point));
const fromSide =
  (distance: (station: number, y: number) => number): Outline =>
  (point) =>
    distance(stationOf(point), point[1]);
/** Seen from ahead or behind; the half of the car facing away is left alone. */
const fromEnd =
  (direction: 1 | -1, distance: (x: number, y: number) => number): Outline =>
  (point) =>
    Math.max(distance(point[0], point[1]), 1.5 - direction * point[2]);

const rightOf = (left: readonly Flat[], radius: number) => rounded(bothSides(left), radius);
const curvedRightOf = (left: readonly Flat[], radius: number) =>
  rounded(curved(bothSides(left)), radius);

/** Distance beyond the wheel arch nearest to a point; the arch runs straight down from its axle. */
export const arch: Outline = (point) => {
  const rise = Math.max(0, point[1] - wheelCentreHeight);
  const away = (axle: number): number => Math.hypot(stationOf(point) - axle, rise);
  return Math.min(away(axles.front), away(axles.rear)) - archRadius;
};
/** Height below the body's lower edge. */
export const below: Outline = (point) => lowerEdge(stationOf(point)) - point[1];

export const stripes = { inner: 0.062, outer: 0.252 } as const;

export const cabin = inPlan(
  curvedRightOf(
    [
      [0, 1.615],
      [0.2, 1.622],
      [0.4, 1.648],
      [0.55, 1.7],
      [0.585, 1.82],
      [0.592, 2.1],
      [0.598, 2.4],
      [0.603, 2.63],
      [0.575, 2.735],
      [0.45, 2.775],
      [0.25, 2.788],
      [0, 2.79],
    ],
    0.06,
  ),
);
export const bonnet = inPlan(
  curvedRightOf(
    [
      [0, 0.425],
      [0.16, 0.428],
      [0.33, 0.45],
      [0.425, 0.52],
      [0.44, 0.8],
      [0.462, 1.2],
      [0.485, 1.4],
      [0.44, 1.437],
      [0.3, 1.44],
      [0, 1.44],
    ],
    0.045,
  ),
);
export const engineCover = inPlan(
  rightOf(
    [
      [0, 2.99],
      [0.44, 2.98],
      [0.4, 3.56],
      [0, 3.6],
    ],
    0.05,
  ),
);
const doorBox = rounded(
  [
    [1.55, 0.3],
    [2.5, 0.3],
    [2.5, 1.3],
    [1.55, 1.3],
  ],
  0.075,
);
/** Distance from the quarter circles at the door's two lower corners. */
export const doorCorners: Outline = (point) => {
  if (point[0] < 0.6) return 1;
  const station = stationOf(point) + 0.08 * (point[1] - 0.5);
  return (
    Math.min(
      Math.hypot(station - 1.52, point[1] - 0.27),
      Math.hypot(station - 2.53, point[1] - 0.27),
    ) - 0.03
  );
};
/**
 * The door runs up over the shoulder to the cabin opening; its upper front corner is rounded by a
 * smooth maximum, as wide as a cell so that the corner can be scored.
 */
export const door: Outline = (point) =>
  rolledMaximum(
    doorBox(stationOf(point) + 0.08 * (point[1] - 0.5), point[1]),
    0.645 - point[0],
    0.16,
  );
/** Distance in plan from the tight corners of engine cover and door. */
export const panelCorners: Outline = (point) => {
  if (point[1] < 0.6) return 1;
  const station = stationOf(point);
  const away = [
    [0.475, 2.95],
    [0.43, 3.595],
    [0.67, 1.49],
  ].map(([x, at]) => Math.hypot(point[0] - x!, station - at!));
  return Math.min(...away) - 0.03;
};
export const sideVent = fromSide(
  rounded(
    [
      [1.235, 0.43],
      [1.32, 0.43],
      [1.35, 0.535],
      [1.265, 0.535],
    ],
    0.018,
  ),
);
// A parallelogram swept back as it goes out. The mask keeps the plan from cutting the underside of the nose as well.
const headlampInPlan = inPlan(
  rounded(
    [
      [0.56, 0.282],
      [0.705, 0.395],
      [0.702, 0.56],
      [0.56, 0.428],
    ],
    0.041,
  ),
);
export const headlamp: Outline = (point) => Math.max(headlampInPlan(point), 0.5 - point[1]);

/** A slot with a straight upper edge and round lower corners. */
export const grille = fromEnd(
  1,
  rightOf(
    [
      [0, 0.268],
      [0.32, 0.268],
      [0.362, 0.2745],
      [0.394, 0.294],
      [0.414, 0.323],
      [0.424, 0.36],
      [0.435, 0.396],
      [0, 0.396],
    ],
    0.028,
  ),
);
export const frontIndicator = fromEnd(
  1,
  rounded(
    [
      [0.565, 0.335],
      [0.645, 0.345],
    ],
    0.024,
  ),
);
export const splitterLine: Outline = (point) => Math.max(point[1] - 0.192, stationOf(point) - 0.45);
export const sillLine: Outline = (point) => {
  const station = stationOf(point);
  const between = Math.max(axles.front - station, station - axles.rear);
  return Math.max(point[1] - lowerEdge(station) - 0.068, between);
};
export const tailLamp = fromEnd(
  -1,
  rounded(
    [
      [0.415, 0.674],
      [0.742, 0.674],
      [0.768, 0.728],
      [0.441, 0.728],
    ],
    0.02,
  ),
);
/** Splits the tail lamp: the indicator sits inboard. */
export const tailIndicator: Outline = (point) => Math.max(point[0] - 0.5, point[2] + 1.5);
export const plateRecess = fromEnd(
  -1,
  rightOf(
    [
      [0, 0.455],
      [0.27, 0.455],
      [0.25, 0.555],
      [0, 0.555],
    ],
    0.03,
  ),
);
export const diffuser = fromEnd(
  -1,
  rightOf(
    [
      [0, 0.1],
      [0.56, 0.1],
      [0.53, 0.31],
      [0, 0.32],
    ],
    0.045,
  ),
);
