/**
 * What *kept apart* found, and how the main colours relate, in plain terms: hue, lightness,
 * chroma, and the published two-colour formula as one experiment's opinion [OuLuo2006].
 */
import { ciede2000 } from '../../colour/difference.ts';
import { pairOpinion } from '../../colour/harmony.ts';
import type { Evidence } from '../evidence.ts';
import { neutralChroma } from '../judgement.ts';
import type { Worn } from '../seen/worn.ts';
import { nearlySameCost, nearlySameCurve } from '../six/harmony.ts';
import { evidenceAbout, quantity, type Scheme, surfaceAt } from './scheme.ts';

/** Evidence for colours kept apart, and one remark on how the two largest colours relate. */
export function harmonyEvidence(scheme: Scheme): Evidence[] {
  const found = scheme.terms.pairs.flatMap(({ group }) => {
    if (group === undefined) return [];
    const one = scheme.worn[group.a]!;
    const other = scheme.worn[group.b]!;
    const cost = nearlySameCost(group, one, other);
    if (cost === 0) return [];
    const curve = nearlySameCurve(one, other);
    return [
      evidenceAbout(
        scheme,
        'harmony',
        'nearly-same',
        [group.a, group.b],
        cost,
        {
          deltaE: quantity(ciede2000(one.lab, other.lab), 'ΔE2000'),
          plainlyTwo: quantity(curve[curve.length - 1]![0], 'ΔE2000'),
        },
        {
          part: surfaceAt(scheme, group.a).name,
          neighbour: surfaceAt(scheme, group.b).name,
        },
      ),
    ];
  });
  return [...found, ...relation(scheme)];
}

/** How the body and the next largest skin colour relate. */
function relation(scheme: Scheme): Evidence[] {
  const { surfaces, main } = scheme.terms.scene;
  const body = scheme.worn[main]!;
  let second = -1;
  surfaces.forEach((surface, at) => {
    const isOther = surface.given === undefined && scheme.worn[at]!.ref !== body.ref;
    const isCandidate = isOther && surface.role === 'feature' && at !== main;
    if (isCandidate && (second < 0 || surface.areaMm2 > surfaces[second]!.areaMm2)) second = at;
  });
  if (second < 0) return [];
  const other = scheme.worn[second]!;
  return [
    evidenceAbout(
      scheme,
      'harmony',
      body.chroma < neutralChroma || other.chroma < neutralChroma ? 'relation-neutral' : 'relation',
      [main, second],
      0,
      {
        hueApart: quantity(hueApart(body, other), '°'),
        deltaL: quantity(other.lab[0] - body.lab[0], 'ΔL*'),
        deltaC: quantity(other.chroma - body.chroma, 'ΔC*'),
        opinion: quantity(pairOpinion(body.lab, other.lab), 'CH'),
      },
      { part: surfaceAt(scheme, main).name, neighbour: surfaceAt(scheme, second).name },
    ),
  ];
}

function hueApart(one: Worn, other: Worn): number {
  const hue = (worn: Worn): number => (Math.atan2(worn.lab[2], worn.lab[1]) * 180) / Math.PI;
  const apart = Math.abs(hue(one) - hue(other));
  return apart > 180 ? 360 - apart : apart;
}
