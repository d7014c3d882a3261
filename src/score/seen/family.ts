/**
 * Which finishes read as one colour?
 *
 * In: every finish the build may wear. Out: families, computed once for the build so that they do
 * not change from one alternative to the next, nor with the order finishes are named in. Complete linkage: every two members of a family
 * are within reach of each other, by CIEDE2000 with k_L 1.5 [Sharma2005], metal and paint held
 * apart, very dark neutrals all one black. Reach and offsets are our judgement.
 */
import { ciede2000 } from '../../colour/difference.ts';
import type { Lab } from '../../ground/unit.ts';
import {
  blackChroma,
  blackLightness,
  familyLightnessFactor,
  familyReach,
  loudChroma,
  metalApart,
  paleLightness,
  quietChroma,
} from '../judgement.ts';
import type { Worn } from './worn.ts';

export interface Family {
  /** An everyday word for its colour; two families may share it. */
  readonly word: string;
  readonly members: readonly Worn[];
  readonly isBlack: boolean;
  readonly isMetal: boolean;
  /** Colourful enough to be an accent on its own. */
  readonly isLoud: boolean;
  /** Not colourful, but pale or tinted enough to tie parts together. */
  readonly isQuiet: boolean;
}

const isBlack = (worn: Worn): boolean =>
  worn.lab[0] <= blackLightness && worn.chroma <= blackChroma;

/** Distance of two finishes as colours of one family. */
export function familyDistance(one: Worn, other: Worn): number {
  if (isBlack(one) && isBlack(other)) return 0;
  const apart = one.isMetalLike !== other.isMetalLike ? metalApart : 0;
  return ciede2000(one.lab, other.lab, familyLightnessFactor) + apart;
}

/** Families of the finishes, each finish (by reference) in exactly one. */
export function familiesOf(worn: readonly Worn[]): Family[] {
  const distinct = [...new Map(worn.map((one) => [one.ref, one])).values()];
  // In one order whoever names them first, so that equal distances join alike in every build.
  distinct.sort((one, other) => (one.ref < other.ref ? -1 : 1));
  return clustersOf(distinct).map(familyFrom);
}

/** Complete linkage, nearest pair first; ties go to the pair listed first. */
function clustersOf(worn: readonly Worn[]): Worn[][] {
  const clusters = worn.map((one) => [one]);
  const reach = worn.map((one) => worn.map((other) => familyDistance(one, other)));
  const alive = worn.map((_, k) => k);
  for (;;) {
    let best = familyReach;
    let pair: [number, number] | undefined;
    for (let i = 0; i < alive.length; i++) {
      const row = reach[alive[i]!]!;
      for (let j = i + 1; j < alive.length; j++) {
        const distance = row[alive[j]!]!;
        if (distance < best || (distance === best && pair === undefined)) {
          best = distance;
          pair = [i, j];
        }
      }
    }
    if (pair === undefined) return alive.map((k) => clusters[k]!);
    const [keep, gone] = [alive[pair[0]]!, alive[pair[1]]!];
    clusters[keep]!.push(...clusters[gone]!);
    for (const k of alive) {
      const farther = Math.max(reach[keep]![k]!, reach[gone]![k]!);
      reach[keep]![k] = farther;
      reach[k]![keep] = farther;
    }
    alive.splice(pair[1], 1);
  }
}

function familyFrom(members: readonly Worn[]): Family {
  const loudest = loudestOf(members);
  const allBlack = members.every(isBlack);
  const isMetal = members.every((member) => member.isMetalLike);
  return {
    word: colourWord(loudest.lab),
    members,
    isBlack: allBlack,
    isMetal,
    isLoud: loudest.chroma >= loudChroma,
    isQuiet:
      !allBlack &&
      !isMetal &&
      (loudest.chroma >= quietChroma || members.some((one) => one.lab[0] >= paleLightness)),
  };
}

/**
 * What a family is called where these of its members are worn: one finish by its own name, several
 * by the everyday word with their names.
 */
export function familyNamed({ word }: Family, worn: readonly Worn[]): string {
  const names = [...new Set(worn.map(({ name }) => name))];
  return names.length === 1 ? names[0]! : `${word} (${names.join(', ')})`;
}

const loudestOf = (members: readonly Worn[]): Worn =>
  members.reduce((best, member) => (member.chroma > best.chroma ? member : best));

/** Hue sectors of CIELAB, upper bound in degrees; our judgement, for words only. */
const hueWords: readonly (readonly [upTo: number, word: string])[] = [
  [42, 'red'],
  [72, 'orange'],
  [104, 'yellow'],
  [175, 'green'],
  [225, 'turquoise'],
  [295, 'blue'],
  [330, 'purple'],
  [352, 'pink'],
  [361, 'red'],
];

/** An everyday word for a colour, for sentences; a hint, never an identity. */
export function colourWord(lab: Lab): string {
  const [lightness, a, b] = lab;
  const chroma = Math.hypot(a, b);
  if (chroma < 9) return lightness < 30 ? 'black' : lightness > 84 ? 'white' : 'grey';
  const hueDegrees = ((Math.atan2(b, a) * 180) / Math.PI + 360) % 360;
  const isWarm = hueDegrees > 35 && hueDegrees < 110;
  if (isWarm && lightness > 76 && chroma < 36) return 'cream';
  if (isWarm && chroma < 46 && lightness <= 76) return lightness > 42 ? 'tan' : 'brown';
  if (hueDegrees < 30 && lightness > 62) return 'pink';
  return hueWords.find(([upTo]) => hueDegrees < upTo)![1];
}
