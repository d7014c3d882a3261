/** Why the steadiness score is what it is: small features that fade under a lamp or for some eyes. */
import type { Evidence } from '../evidence.ts';
import { steadyEyes, steadyLights } from '../seen/worn.ts';
import type { Reading } from '../six/contrast.ts';
import { steadinessCost, visibilitiesElsewhere } from '../six/steadiness.ts';
import {
  evidenceAbout,
  type Gathered,
  gathered,
  namesOf,
  quantity,
  type Scheme,
  surfaceAt,
} from './scheme.ts';

/** Visible steps from which a part reads without doubt, and by how many fewer it fades. */
const readsAt = 2;
const fades = 0.3;

/** Lights and eyes as they stand in a sentence. */
const lightNames = { D65: 'daylight', A: 'a warm lamp', 'LED-B3': 'LED light' } as const;
const eyeNames = { protan: 'red-weak', deutan: 'green-weak' } as const;

/** Evidence for steadiness. */
export function steadinessEvidence(scheme: Scheme): Evidence[] {
  const delicate = scheme.terms.pairs.flatMap((pair) => (pair.delicate ? [pair.reading!] : []));
  const found = gathered(delicate, (reading) => {
    const cost = costOf(scheme, reading);
    return cost > 0 ? { kind: kindOf(scheme, reading), cost } : undefined;
  });
  const costly = new Set(found.map(({ feature }) => feature));
  const steady = [...new Set(delicate.map(({ feature }) => feature))].filter(
    (at) => !costly.has(at),
  );
  const evidence = found.map((one) => findingOf(scheme, one));
  if (steady.length === 0) return evidence;
  const words = { parts: namesOf(scheme, steady) };
  return [...evidence, evidenceAbout(scheme, 'steadiness', 'steady', steady, 0, {}, words)];
}

type Kind = 'weak-anywhere' | 'fair-anywhere' | 'fades-for-eyes' | 'fades-under-light';

const costOf = (scheme: Scheme, reading: Reading): number =>
  steadinessCost(reading, scheme.worn[reading.feature]!, scheme.worn[reading.neighbour]!);

/** Least v by daylight, under the worst light and to the worst eyes. */
function worstOf(scheme: Scheme, reading: Reading) {
  const { lights, eyes } = visibilitiesElsewhere(
    reading,
    scheme.worn[reading.feature]!,
    scheme.worn[reading.neighbour]!,
  );
  const light = lights.indexOf(Math.min(...lights));
  const eye = eyes.indexOf(Math.min(...eyes));
  return { daylight: lights[0]!, light, eye, inLight: lights[light]!, toEye: eyes[eye]! };
}

function kindOf(scheme: Scheme, reading: Reading): Kind {
  const { daylight, inLight, toEye } = worstOf(scheme, reading);
  // What hardly changes is no weakness of a lamp or an eye.
  if (Math.min(inLight, toEye) > daylight - fades) {
    return daylight < readsAt ? 'weak-anywhere' : 'fair-anywhere';
  }
  return toEye < inLight ? 'fades-for-eyes' : 'fades-under-light';
}

function findingOf(scheme: Scheme, one: Gathered<Kind>): Evidence {
  const { feature: at, kind, neighbours, worst, cost } = one;
  const { daylight, light, eye, inLight, toEye } = worstOf(scheme, worst);
  const deltaL = Math.abs(scheme.worn[at]!.lab[0] - scheme.worn[worst.neighbour]!.lab[0]);
  return evidenceAbout(
    scheme,
    'steadiness',
    kind,
    [at, ...neighbours],
    cost,
    {
      daylight: quantity(daylight, 'visible steps'),
      worst: quantity(Math.min(inLight, toEye), 'visible steps'),
      deltaL: quantity(deltaL, 'ΔL*'),
    },
    {
      part: surfaceAt(scheme, at).name,
      neighbours: namesOf(scheme, neighbours),
      light: lightNames[steadyLights[light]!],
      eyes: eyeNames[steadyEyes[eye]!],
    },
  );
}
