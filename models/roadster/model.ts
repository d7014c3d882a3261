/**
 * The roadster put together: body, cabin and fittings in place, two seats from one, four wheels
 * from one. Out: the bytes of models/roadster.glb, the same on every run. Full-size metres, y up,
 * nose towards +z, tyres on y = 0.
 */
import { type Assembly, glbOf, type Place, stillHere } from '../mesh/glb.ts';
import type { Facet, Solid } from '../mesh/solid.ts';
import { bodyFacets } from './body.ts';
import { cabinLeft, cabinMiddle, floorHeight, seatPlace } from './cabin.ts';
import { dashboard } from './dashboard.ts';
import { axles, placed, wheelCentreHeight } from './lines.ts';
import { parts } from './parts.ts';
import { seat } from './seats.ts';
import { endsLeft, endsMiddle } from './trim/ends.ts';
import { fittingsLeft, fittingsMiddle } from './trim/fittings.ts';
import { screenLeft, screenMiddle } from './trim/screen.ts';
import { caliper, wheel } from './wheel.ts';

const facetsOf = (solids: readonly Solid[]) => solids.flatMap((solid) => solid.facets());

/** What lies left of the middle; a triangle across it would show twice, or only by half. */
function leftOf(facets: readonly Facet[]): Facet[] {
  const isLeft = ({ part, corners }: Facet): boolean => {
    const across = corners.map(([x]) => x);
    if (Math.min(...across) < -1e-6 && Math.max(...across) > 1e-6) {
      throw new RangeError(`A triangle of “${part}” lies across the middle.`);
    }
    return Math.max(...across) > 1e-6;
  };
  return facets.filter(isLeft);
}

// Half turns about y put the wheel's outer face to the left (+x) or to the right.
const quarter = Math.SQRT1_2;
const corners = [
  { name: 'front-left', station: axles.front, x: 0.843, side: 1 },
  { name: 'front-right', station: axles.front, x: -0.843, side: -1 },
  { name: 'rear-left', station: axles.rear, x: 0.883, side: 1 },
  { name: 'rear-right', station: axles.rear, x: -0.883, side: -1 },
] as const;

const wheelPlaces: Place[] = corners.map(({ name, station, x, side }) => ({
  name,
  at: placed(station, wheelCentreHeight, x),
  turn: [0, side * quarter, 0, quarter],
}));

// The caliper trails its axle, a little above it, where it shows between two pairs of spokes: a
// turn about the axle before the wheel's own.
const caliperPlaces: Place[] = corners.map(({ name, station, x, side }) => {
  const turn = side === 1 ? 0.314 : Math.PI - 0.314;
  const [c, s] = [Math.cos(turn / 2), Math.sin(turn / 2)];
  return {
    name,
    at: placed(station, wheelCentreHeight, x),
    turn: [side * quarter * s, side * quarter * c, quarter * s, quarter * c],
  };
});

const seatPlaces: Place[] = [
  { name: 'left', x: seatPlace.x },
  { name: 'right', x: -seatPlace.x },
].map(({ name, x }) => ({
  name,
  at: placed(seatPlace.station, floorHeight - 0.04, x),
  turn: stillHere.turn,
}));

// The left half of all that has two sides, and its mirror image.
const sides: Place[] = [
  { ...stillHere, name: 'left', isHalf: true },
  {
    ...stillHere,
    name: 'right',
    isHalf: true,
    isMirrored: true,
    partHere: (part) => (part === 'stripe-left' ? 'stripe-right' : part),
  },
];

const glossy = new Set(['body', 'stripe-left', 'engine-cover', 'tail-lamps', 'mirrors']);
const isGlossy = (part: string): boolean => glossy.has(part);

/** The parts of the car and where they stand. */
export const assemblies = (): Assembly[] => [
  {
    facets: [
      ...bodyFacets(),
      ...leftOf(facetsOf([...cabinLeft(), ...screenLeft(), ...endsLeft(), ...fittingsLeft()])),
    ],
    places: sides,
    reach: 2.125,
    isGlossy,
  },
  {
    facets: facetsOf([
      ...cabinMiddle(),
      ...dashboard(),
      ...screenMiddle(),
      ...endsMiddle(),
      ...fittingsMiddle(),
    ]),
    places: [stillHere],
    reach: 2.125,
    isGlossy,
  },
  { facets: facetsOf(seat()), places: seatPlaces, reach: 1 },
  { facets: facetsOf(wheel()), places: wheelPlaces, reach: 0.5 },
  { facets: facetsOf([caliper()]), places: caliperPlaces, reach: 0.5 },
];

/** The bytes of the roadster's GLB. */
export const modelBytes = (): Promise<Uint8Array> => glbOf('roadster', assemblies(), parts);
