/**
 * What of a build is seen from where: the car's sight table brought to the build's scale, with
 * the car's parts gathered into the build's parts.
 *
 * In: a build and its car's sight table. Out: surfaces (one per part of the build, and one per
 * given part of the car that the build does not cover) and their borders; parts that are not on the model have none. Areas in mm² and
 * lengths in mm at scale; angles in degrees at the viewing distance. How much an area counts is our judgement.
 *
 * Limits: visible areas are measured from one camera distance, so very near or far viewing only
 * changes angles, not what hides what.
 */
import type { Build, Part } from '../../build/build.ts';
import { absentCarParts } from '../../build/fitted.ts';
import type { Group, Role, SightPart, SightTable, Zone } from '../../car/table.ts';
import { zones } from '../../car/table.ts';
import { fullImportanceMm2, stripElongation } from '../judgement.ts';
import { visualAngleDegrees } from './visibility.ts';

export interface Surface {
  /** Build part id, or the car part id of a given surface. */
  readonly id: string;
  readonly name: string;
  readonly role: Role;
  readonly group: Group;
  /** Colour and gloss of a surface nobody chooses; absent where the build decides. */
  readonly given: NonNullable<SightPart['given']> | undefined;
  /** mm² in the whole-car look that shows most of it. */
  readonly areaMm2: number;
  /** Percent of the car seen, over the whole-car looks by weight. */
  readonly sharePercent: number;
  /** 0–1, by the square root of its area: how much it counts. */
  readonly importance: number;
  /** Smallest visible dimension; undefined where it is large enough not to matter. */
  readonly thicknessMm: number | undefined;
  readonly sizeDegrees: number;
  readonly isStrip: boolean;
  /** mm² at [zone × whole-car looks + look]. */
  readonly zoneLookMm2: Float64Array;
}

export interface Border {
  /** Positions of the two surfaces in `surfaces`. */
  readonly a: number;
  readonly b: number;
  /** Share 0–1 of each one's own border that is with the other. */
  readonly shareOfA: number;
  readonly shareOfB: number;
  /** Share 0–1 of the border where the surfaces touch. */
  readonly touching: number;
}

export interface Scene {
  readonly surfaces: readonly Surface[];
  readonly borders: readonly Border[];
  /** Position of each build part in `surfaces`. */
  readonly positions: ReadonlyMap<string, number>;
  readonly lookNames: readonly string[];
  /** Weights of the whole-car looks, summing to 1. */
  readonly lookWeights: Float64Array;
  /** Position of the surface that is most of the skin, usually the body. */
  readonly main: number;
  readonly distanceMm: number;
}

/** Thickness above which the sight table does not measure; full size, mm. */
const unmeasuredMm = 240;

/** The scene of a build; car parts covered by no part and not given take no share in scores. */
export function sceneOf(build: Build, sight: SightTable, distanceMm: number): Scene {
  const whole = sight.looks.flatMap((look, at) => (look.isWhole ? [at] : []));
  const weightSum = whole.reduce((sum, at) => sum + sight.looks[at]!.weight, 0);
  const lookWeights = Float64Array.from(whole, (at) => sight.looks[at]!.weight / weightSum);
  const absent = absentCarParts(build, sight.parts);
  const carParts = new Map(
    sight.parts.flatMap((part) => (absent.has(part.id) ? [] : [[part.id, part] as const])),
  );
  const carTotal = weightedArea([...carParts.values()], whole, lookWeights);

  const surfaces: Surface[] = [];
  const surfaceOfCarPart = new Map<string, number>();
  const take = (id: string, name: string, members: SightPart[], isGiven: boolean): void => {
    if (members.length === 0) return;
    for (const member of members) surfaceOfCarPart.set(member.id, surfaces.length);
    const share = (100 * weightedArea(members, whole, lookWeights)) / carTotal;
    surfaces.push(surfaceFrom(id, name, members, whole, share, build.scale, distanceMm, isGiven));
  };
  for (const part of build.parts)
    if (!part.absent) take(part.id, part.name, membersOf(part, carParts), false);
  for (const part of sight.parts) {
    if (part.given !== undefined && carParts.has(part.id) && !surfaceOfCarPart.has(part.id)) {
      take(part.id, part.name, [part], true);
    }
  }
  return {
    surfaces,
    borders: bordersOf(sight, surfaces.length, surfaceOfCarPart),
    positions: new Map(surfaces.map((surface, at) => [surface.id, at])),
    lookNames: whole.map((at) => sight.looks[at]!.name),
    lookWeights,
    main: mainOf(surfaces),
    distanceMm,
  };
}

const membersOf = (part: Part, carParts: ReadonlyMap<string, SightPart>): SightPart[] =>
  part.covers.flatMap((id) => carParts.get(id) ?? []);

const areaIn = (part: SightPart, look: number): number =>
  Object.values(part.areaMm2).reduce((sum, perLook) => sum + (perLook[look] ?? 0), 0);

function weightedArea(parts: SightPart[], whole: number[], weights: Float64Array): number {
  let sum = 0;
  for (const part of parts) {
    whole.forEach((look, k) => {
      sum += weights[k]! * areaIn(part, look);
    });
  }
  return sum;
}

function surfaceFrom(
  id: string,
  name: string,
  members: SightPart[],
  whole: number[],
  sharePercent: number,
  scale: number,
  distanceMm: number,
  isGiven: boolean,
): Surface {
  const zoneLookMm2 = new Float64Array(zones.length * whole.length);
  for (const member of members) {
    zones.forEach((zone: Zone, z) => {
      whole.forEach((look, k) => {
        zoneLookMm2[z * whole.length + k]! += (member.areaMm2[zone]?.[look] ?? 0) / scale ** 2;
      });
    });
  }
  const perLook = whole.map((_, k) =>
    zones.reduce((sum, _zone, z) => sum + zoneLookMm2[z * whole.length + k]!, 0),
  );
  const areaMm2 = Math.max(0, ...perLook);
  const largest = members.reduce((best, member) =>
    totalOf(member) > totalOf(best) ? member : best,
  );
  const role = isGiven
    ? 'given'
    : members.some((member) => member.role === 'feature')
      ? 'feature'
      : largest.role === 'given' || largest.role === 'gap'
        ? 'ground'
        : largest.role;
  const thicknessMm = thicknessOf(members, scale);
  const seenMm = thicknessMm ?? unmeasuredMm / scale;
  return {
    id,
    name,
    role,
    group: largest.group,
    given: isGiven ? largest.given : undefined,
    areaMm2,
    sharePercent,
    importance: Math.min(1, Math.sqrt(areaMm2 / fullImportanceMm2)),
    thicknessMm,
    sizeDegrees: visualAngleDegrees(seenMm, distanceMm),
    isStrip: thicknessMm !== undefined && areaMm2 > stripElongation * thicknessMm ** 2,
    zoneLookMm2,
  };
}

const totalOf = (part: SightPart): number =>
  Object.values(part.areaMm2).reduce(
    (sum, perLook) => sum + perLook.reduce((all, area) => all + area, 0),
    0,
  );

/** Area-weighted thickness of the members; undefined where most of the area is unmeasured. */
function thicknessOf(members: SightPart[], scale: number): number | undefined {
  let measured = 0;
  let unmeasured = 0;
  let sum = 0;
  for (const member of members) {
    const area = totalOf(member);
    if (member.thicknessMm === null) unmeasured += area;
    else {
      measured += area;
      sum += (area * member.thicknessMm) / scale;
    }
  }
  return measured > unmeasured && measured > 0 ? sum / measured : undefined;
}

function bordersOf(
  sight: SightTable,
  count: number,
  surfaceOfCarPart: ReadonlyMap<string, number>,
): Border[] {
  const lengths = new Float64Array(count * count);
  const touches = new Float64Array(count * count);
  const whole = new Float64Array(count);
  for (const border of sight.borders) {
    const one = surfaceOfCarPart.get(border.a);
    const other = surfaceOfCarPart.get(border.b);
    if (one === undefined || other === undefined || one === other) continue;
    const [a, b] = one < other ? [one, other] : [other, one];
    lengths[a * count + b]! += border.lengthMm;
    touches[a * count + b]! += border.lengthMm * border.touching;
    whole[a]! += border.lengthMm;
    whole[b]! += border.lengthMm;
  }
  const borders: Border[] = [];
  for (let a = 0; a < count; a++) {
    for (let b = a + 1; b < count; b++) {
      const length = lengths[a * count + b]!;
      if (length === 0) continue;
      borders.push({
        a,
        b,
        shareOfA: length / whole[a]!,
        shareOfB: length / whole[b]!,
        touching: touches[a * count + b]! / length,
      });
    }
  }
  return borders;
}

/** The largest chosen surface of the skin; the largest chosen surface of all where there is none. */
function mainOf(surfaces: readonly Surface[]): number {
  let main = -1;
  const rank = (surface: Surface): number =>
    surface.given === undefined ? surface.areaMm2 + (surface.group === 'skin' ? 1e9 : 0) : -1;
  surfaces.forEach((surface, at) => {
    if (main < 0 || rank(surface) > rank(surfaces[main]!)) main = at;
  });
  return main;
}
