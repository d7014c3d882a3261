/**
 * Where on the car does a surface sit? Gives every triangle one of the seven zones from the group
 * of its part, its place and which way it faces, so that it also works for cars made elsewhere:
 * wheels and cabin by group; of the rest what lies before the front wheels or behind the rear ones
 * and does not face up is nose or tail; what faces up before the windscreen is bonnet, behind the
 * cabin deck; all else (doors, sills, mirrors, screen frame) is flank. Our judgement, in full-size mm.
 * Limits: a roof counts as deck; a forward-control van has hardly any bonnet.
 */
import { boundsOf, cornerOf, facetOf, type Mesh, partOf } from './mesh.ts';
import { type Zone, zones } from './table.ts';

/** A surface within 60° of level, facing the sky, is seen as bonnet, roof or deck. */
const facesUp = 0.5;
/** Where wheels or screen cannot tell: nose and tail are this share of the length. */
const endShare = 0.15;
const bonnetShare = 0.35;
const deckShare = 0.25;
/** A node smaller than this (diagonal, mm) sits in one zone as a whole: a badge, a lamp. */
const small = 400;

interface Landmarks {
  readonly noseFrom: number;
  readonly tailFrom: number;
  readonly bonnetFrom: number;
  readonly deckFrom: number;
  readonly roofFrom: number;
}

/** Index into `zones` for each triangle. */
export function zonesOf(mesh: Mesh): Uint8Array {
  const marks = landmarksOf(mesh);
  const zoneOf = new Uint8Array(mesh.nodeOf.length);
  const ofNode = mesh.nodes.map(emptyNode);
  for (let triangle = 0; triangle < zoneOf.length; triangle++) {
    const { centroid, normal } = facetOf(mesh, triangle);
    const area = Math.hypot(...normal);
    const zone = zoneAt(
      marks,
      mesh.parts[partOf(mesh, triangle)]!.group,
      centroid,
      normal[1] / (area || 1),
    );
    zoneOf[triangle] = zones.indexOf(zone);
    const node = ofNode[mesh.nodeOf[triangle]!]!;
    node.area[zoneOf[triangle]!]! += area;
    for (let corner = 0; corner < 3; corner++) {
      cornerOf(mesh, triangle, corner).forEach((value, axis) => {
        node.low[axis] = Math.min(node.low[axis]!, value);
        node.high[axis] = Math.max(node.high[axis]!, value);
      });
    }
  }
  for (let triangle = 0; triangle < zoneOf.length; triangle++) {
    const { low, high, area } = ofNode[mesh.nodeOf[triangle]!]!;
    const diagonal = Math.hypot(high[0]! - low[0]!, high[1]! - low[1]!, high[2]! - low[2]!);
    if (diagonal < small) zoneOf[triangle] = area.indexOf(Math.max(...area));
  }
  return zoneOf;
}

const emptyNode = () => ({
  area: zones.map(() => 0),
  low: [Infinity, Infinity, Infinity],
  high: [-Infinity, -Infinity, -Infinity],
});

function zoneAt(
  marks: Landmarks,
  group: string,
  [, height, z]: readonly [number, number, number],
  up: number,
): Zone {
  if (group === 'wheels') return 'wheels';
  if (group === 'cabin') return 'cabin';
  if (up > facesUp) {
    if (z > marks.bonnetFrom) return 'bonnet';
    if (z < marks.deckFrom || height > marks.roofFrom) return 'deck';
  }
  if (z > marks.noseFrom) return 'nose';
  return z < marks.tailFrom ? 'tail' : 'flank';
}

/** Where nose, bonnet, deck and tail begin along the car, and the roof above the ground, mm. */
function landmarksOf(mesh: Mesh): Landmarks {
  const car = boundsOf(mesh)!;
  const length = car.high[2] - car.low[2];
  const middle = (car.high[2] + car.low[2]) / 2;
  const part = (triangle: number) => mesh.parts[partOf(mesh, triangle)]!;
  const wheels = boundsOf(mesh, (triangle) => part(triangle).group === 'wheels');
  const cabin = boundsOf(mesh, (triangle) => part(triangle).group === 'cabin');
  const screen = boundsOf(mesh, (triangle) => {
    const { id, isGlass } = part(triangle);
    return (isGlass || /screen/.test(id)) && !/lamp|lens|light/.test(id);
  });
  const noseFrom =
    wheels && wheels.high[2] > middle ? wheels.high[2] : car.high[2] - endShare * length;
  const tailFrom =
    wheels && wheels.low[2] < middle ? wheels.low[2] : car.low[2] + endShare * length;
  const screenFoot = screen?.high[2] ?? cabin?.high[2];
  return {
    noseFrom,
    tailFrom,
    // The foot of the screen curves forward in the middle; the bonnet ends a hand's breadth later.
    bonnetFrom: screenFoot === undefined ? car.high[2] - bonnetShare * length : screenFoot - 150,
    deckFrom: cabin?.low[2] ?? screen?.low[2] ?? car.low[2] + deckShare * length,
    roofFrom: screen?.high[1] === undefined ? car.high[1] * 0.9 : screen.high[1] - 60,
  };
}
