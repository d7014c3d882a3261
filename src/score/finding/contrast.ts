/** Why the contrast score is what it is: every reading that costs, and what reads well. */
import { ciede2000 } from '../../colour/difference.ts';
import type { Evidence } from '../evidence.ts';
import { sameToTheEye } from '../judgement.ts';
import { contrastCost, type Reading, visibilityOf } from '../six/contrast.ts';
import {
  evidenceAbout,
  type Gathered,
  gathered,
  namesOf,
  quantity,
  type Scheme,
  surfaceAt,
} from './scheme.ts';

/** v a pair should reach to read without doubt. */
const readsAt = 2;
/** v from which it reads at a glance, and costs nothing. */
const clearAt = 3;

/** Evidence for contrast. */
export function contrastEvidence(scheme: Scheme): Evidence[] {
  const readings = scheme.terms.pairs.flatMap(({ reading }) => reading ?? []);
  const found = gathered(readings, (reading) => {
    const kind = kindOf(scheme, reading);
    return kind && { kind, cost: costOf(scheme, reading) };
  });
  return [...found.map((one) => findingOf(scheme, one)), ...clearFeatures(scheme, readings)];
}

const costOf = (scheme: Scheme, reading: Reading): number =>
  contrastCost(reading, scheme.worn[reading.feature]!, scheme.worn[reading.neighbour]!);
const stepsOf = (scheme: Scheme, reading: Reading): number =>
  visibilityOf(reading, scheme.worn[reading.feature]!, scheme.worn[reading.neighbour]!);

function findingOf(
  scheme: Scheme,
  { feature: at, kind, neighbours, worst, cost }: Found,
): Evidence {
  const feature = scheme.worn[at]!;
  const neighbour = scheme.worn[worst.neighbour]!;
  const surface = surfaceAt(scheme, at);
  return evidenceAbout(
    scheme,
    'contrast',
    kind,
    [at, ...neighbours],
    cost,
    {
      size: quantity(surface.thicknessMm ?? Math.sqrt(surface.areaMm2), 'mm'),
      distance: quantity(scheme.terms.scene.distanceMm, 'mm'),
      deltaL: quantity(Math.abs(feature.lab[0] - neighbour.lab[0]), 'ΔL*'),
      needed: quantity(readsAt * worst.thresholds.lightness, 'ΔL*'),
      deltaE: quantity(ciede2000(feature.lab, neighbour.lab), 'ΔE2000'),
      visibility: quantity(stepsOf(scheme, worst), 'visible steps'),
    },
    { part: surface.name, neighbours: namesOf(scheme, neighbours), finish: feature.name },
  );
}

type Kind = 'too-small' | 'must-read' | 'lost' | 'weak' | 'fair' | 'wasted';
type Found = Gathered<Kind>;

function kindOf(scheme: Scheme, reading: Reading): Kind | undefined {
  const isSame = scheme.worn[reading.feature]!.ref === scheme.worn[reading.neighbour]!.ref;
  const cost = costOf(scheme, reading);
  if (reading.isTooSmall) return isSame ? undefined : 'too-small';
  if (isSame) return cost > 0 ? 'must-read' : undefined;
  const v = stepsOf(scheme, reading);
  if (cost > 0) return v < 1 ? 'lost' : v < readsAt ? 'weak' : 'fair';
  const isGiven = surfaceAt(scheme, reading.neighbour).given !== undefined;
  return v < sameToTheEye && !isGiven ? 'wasted' : undefined;
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
  const { main } = scheme.terms.scene;
  const clear = [...weakest].flatMap(([at, v]) => (v >= clearAt && at !== main ? [at] : []));
  if (clear.length === 0) return [];
  const words = { parts: namesOf(scheme, clear) };
  return [evidenceAbout(scheme, 'contrast', 'reads', clear, 0, {}, words)];
}
