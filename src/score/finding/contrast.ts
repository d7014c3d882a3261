/** Why the contrast score is what it is: every reading that costs, and what reads well. */
import { ciede2000 } from '../../colour/difference.ts';
import type { Evidence } from '../evidence.ts';
import { sameToTheEye } from '../judgement.ts';
import { contrastCost, type Reading, visibilityOf } from '../six/contrast.ts';
import { evidenceAbout, namesOf, quantity, type Scheme, surfaceAt } from './scheme.ts';

/** v a pair should reach to read without doubt. */
const readsAt = 2;

/** Evidence for contrast. */
export function contrastEvidence(scheme: Scheme): Evidence[] {
  const readings = scheme.terms.pairs.flatMap(({ reading }) => reading ?? []);
  const found = readings.flatMap((reading) => findingOf(scheme, reading));
  return [...found, ...clearFeatures(scheme, readings)];
}

function findingOf(scheme: Scheme, reading: Reading): Evidence[] {
  const feature = scheme.worn[reading.feature]!;
  const neighbour = scheme.worn[reading.neighbour]!;
  const surface = surfaceAt(scheme, reading.feature);
  const cost = contrastCost(reading, feature, neighbour);
  const v = visibilityOf(reading, feature, neighbour);
  const isSame = feature.ref === neighbour.ref;
  const kind = kindOf(reading, isSame, v, cost);
  if (kind === undefined) return [];
  const deltaL = Math.abs(feature.lab[0] - neighbour.lab[0]);
  return [
    evidenceAbout(
      scheme,
      'contrast',
      kind,
      [reading.feature, reading.neighbour],
      cost,
      {
        size: quantity(surface.thicknessMm ?? Math.sqrt(surface.areaMm2), 'mm'),
        distance: quantity(scheme.terms.scene.distanceMm, 'mm'),
        deltaL: quantity(deltaL, 'ΔL*'),
        needed: quantity(readsAt * reading.thresholds.lightness, 'ΔL*'),
        deltaE: quantity(ciede2000(feature.lab, neighbour.lab), 'ΔE2000'),
        visibility: quantity(v, 'visible steps'),
      },
      {
        part: surface.name,
        neighbour: surfaceAt(scheme, reading.neighbour).name,
        finish: feature.name,
      },
    ),
  ];
}

function kindOf(reading: Reading, isSame: boolean, v: number, cost: number): string | undefined {
  if (reading.isTooSmall) return isSame ? undefined : 'too-small';
  if (isSame) return cost > 0 ? 'must-read' : undefined;
  if (cost > 0) return v < 1 ? 'lost' : 'weak';
  return v < sameToTheEye ? 'wasted' : undefined;
}

/** One sentence for all features that read clearly against everything beside them. */
function clearFeatures(scheme: Scheme, readings: readonly Reading[]): Evidence[] {
  const weakest = new Map<number, number>();
  for (const reading of readings) {
    const feature = scheme.worn[reading.feature]!;
    const neighbour = scheme.worn[reading.neighbour]!;
    if (feature.ref === neighbour.ref || reading.isTooSmall) continue;
    const v = visibilityOf(reading, feature, neighbour);
    weakest.set(reading.feature, Math.min(weakest.get(reading.feature) ?? Infinity, v));
  }
  const clear = [...weakest].flatMap(([at, v]) => (v >= readsAt ? [at] : []));
  if (clear.length === 0) return [];
  const words = { parts: namesOf(scheme, clear) };
  return [evidenceAbout(scheme, 'contrast', 'reads', clear, 0, {}, words)];
}
