/** Why the steadiness score is what it is: small features that fade under a lamp or for some eyes. */
import type { Evidence } from '../evidence.ts';
import { neutralChroma } from '../judgement.ts';
import { steadyEyes, steadyLights } from '../seen/worn.ts';
import type { Reading } from '../six/contrast.ts';
import { steadinessCost, visibilitiesElsewhere } from '../six/steadiness.ts';
import { evidenceAbout, inWords, quantity, type Scheme, surfaceAt } from './scheme.ts';

/** Lights and eyes as they stand in a sentence. */
const lightNames = { D65: 'daylight', A: 'a warm lamp', 'LED-B3': 'LED light' } as const;
const eyeNames = { protan: 'red-weak', deutan: 'green-weak' } as const;

/** Evidence for steadiness. */
export function steadinessEvidence(scheme: Scheme): Evidence[] {
  const delicate = scheme.terms.pairs.filter((pair) => pair.delicate);
  const found = delicate.flatMap(({ reading }) => findingOf(scheme, reading!));
  const costly = new Set(found.flatMap(({ parts }) => parts[0]!));
  const steady = [...new Set(delicate.map(({ reading }) => reading!.feature))].filter(
    (at) => !costly.has(surfaceAt(scheme, at).id),
  );
  if (steady.length === 0) return found;
  const words = { parts: inWords(steady.map((at) => surfaceAt(scheme, at).name)) };
  return [...found, evidenceAbout(scheme, 'steadiness', 'steady', steady, 0, {}, words)];
}

function findingOf(scheme: Scheme, reading: Reading): Evidence[] {
  const feature = scheme.worn[reading.feature]!;
  const neighbour = scheme.worn[reading.neighbour]!;
  const cost = steadinessCost(reading, feature, neighbour);
  if (cost === 0) return [];
  const { lights, eyes } = visibilitiesElsewhere(reading, feature, neighbour);
  const daylight = lights[0]!;
  const worstLight = lights.indexOf(Math.min(...lights));
  const worstEye = eyes.indexOf(Math.min(...eyes));
  const fadesForEyes = eyes[worstEye]! < lights[worstLight]!;
  const worst = Math.min(lights[worstLight]!, eyes[worstEye]!);
  const kind =
    daylight < 2 && worst > daylight - 0.3
      ? 'weak-anywhere'
      : fadesForEyes
        ? 'fades-for-eyes'
        : 'fades-under-light';
  const isNeutral = feature.chroma < neutralChroma && neighbour.chroma < neutralChroma;
  return [
    evidenceAbout(
      scheme,
      'steadiness',
      kind,
      [reading.feature, reading.neighbour],
      cost,
      {
        daylight: quantity(daylight, 'visible steps'),
        worst: quantity(worst, 'visible steps'),
        deltaL: quantity(Math.abs(feature.lab[0] - neighbour.lab[0]), 'ΔL*'),
      },
      {
        part: surfaceAt(scheme, reading.feature).name,
        neighbour: surfaceAt(scheme, reading.neighbour).name,
        light: lightNames[steadyLights[worstLight]!],
        eyes: eyeNames[steadyEyes[worstEye]!],
        help: isNeutral ? 'lightness' : 'more lightness between them',
      },
    ),
  ];
}
