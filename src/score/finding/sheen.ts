/**
 * Why the sheen score is what it is: near misses, flake without gloss clear, materials where nobody
 * would put them, pairs that work.
 */
import type { Evidence } from '../evidence.ts';
import { glossClearGu, muchFoilShare, nearMiss, sheenSteps } from '../judgement.ts';
import {
  outOfPlaceCost,
  type SheenPair,
  sheenConcern,
  sheenCost,
  unclearedFlakeCost,
} from '../six/sheen.ts';
import { evidenceAbout, quantity, type Scheme, surfaceAt } from './scheme.ts';

/** Evidence for sheen pairing. */
export function sheenEvidence(scheme: Scheme): Evidence[] {
  const pairs = scheme.terms.pairs.flatMap(({ sheen }) => sheen ?? []);
  return [
    ...pairs.flatMap((pair) => nearMissOf(scheme, pair)),
    ...scheme.worn.flatMap((_, at) => unclearedFlake(scheme, at)),
    ...scheme.worn.flatMap((_, at) => outOfPlace(scheme, at)),
    ...pairs.flatMap((pair) => deliberate(scheme, pair)),
  ];
}

const isOneFamily = ({ terms, choice }: Scheme, { a, b }: SheenPair): boolean =>
  terms.familyOf[a]![choice[a]!] === terms.familyOf[b]![choice[b]!];

function nearMissOf(scheme: Scheme, pair: SheenPair): Evidence[] {
  const one = scheme.worn[pair.a]!;
  const other = scheme.worn[pair.b]!;
  const cost = sheenCost(pair, one, other, isOneFamily(scheme, pair));
  if (cost === 0) return [];
  return [pairEvidence(scheme, pair, 'near-miss', cost)];
}

/** On the skin a clear difference is worth saying; elsewhere silence is praise enough. */
function deliberate(scheme: Scheme, pair: SheenPair): Evidence[] {
  const one = scheme.worn[pair.a]!;
  const other = scheme.worn[pair.b]!;
  const apart = Math.abs(one.sheenStep - other.sheenStep);
  const isClear = apart >= nearMiss[nearMiss.length - 1]![0];
  if (!isClear || sheenConcern(one, other, pair.isSkin, isOneFamily(scheme, pair)) < 0.5) return [];
  return [pairEvidence(scheme, pair, 'deliberate', 0)];
}

function pairEvidence(scheme: Scheme, { a, b }: SheenPair, kind: string, cost: number): Evidence {
  const one = scheme.worn[a]!;
  const other = scheme.worn[b]!;
  const [first, second] = one.gloss60 <= other.gloss60 ? [a, b] : [b, a];
  const duller = scheme.worn[first]!;
  const shinier = scheme.worn[second]!;
  const clearAt = glossAtStep(shinier.sheenStep - nearMiss[nearMiss.length - 1]![0]);
  return evidenceAbout(
    scheme,
    'sheen',
    kind,
    [first, second],
    cost,
    {
      duller: quantity(duller.gloss60, 'GU60'),
      shinier: quantity(shinier.gloss60, 'GU60'),
      steps: quantity(Math.abs(one.sheenStep - other.sheenStep), 'sheen steps'),
      ...(clearAt === undefined ? {} : { clearBelow: quantity(clearAt, 'GU60') }),
    },
    { part: surfaceAt(scheme, first).name, neighbour: surfaceAt(scheme, second).name },
  );
}

/** Gloss at a sheen step; undefined below the dullest. */
function glossAtStep(step: number): number | undefined {
  for (let k = 1; k < sheenSteps.length; k++) {
    const [fromGu, from] = sheenSteps[k - 1]!;
    const [toGu, to] = sheenSteps[k]!;
    if (step >= from && step <= to) return fromGu + ((toGu - fromGu) * (step - from)) / (to - from);
  }
  return undefined;
}

function unclearedFlake(scheme: Scheme, at: number): Evidence[] {
  const worn = scheme.worn[at]!;
  const cost = unclearedFlakeCost(scheme.terms.scene, at, worn);
  if (cost === 0) return [];
  return [
    evidenceAbout(
      scheme,
      'sheen',
      'flake-without-clear',
      [at],
      cost,
      { gloss: quantity(worn.gloss60, 'GU60'), usual: quantity(glossClearGu, 'GU60') },
      { part: surfaceAt(scheme, at).name, finish: worn.name, effect: worn.effect },
    ),
  ];
}

/** What has no business on a part; foil over much of the car is remarked, since some do it well. */
function outOfPlace(scheme: Scheme, at: number): Evidence[] {
  const worn = scheme.worn[at]!;
  const surface = surfaceAt(scheme, at);
  const cost = outOfPlaceCost(scheme.terms.scene, at, worn);
  const words = { part: surface.name, finish: worn.name, effect: worn.effect };
  if (cost > 0) return [evidenceAbout(scheme, 'sheen', 'out-of-place', [at], cost, {}, words)];
  const isMuchFoil = worn.effect === 'foil' && surface.sharePercent >= muchFoilShare;
  if (surface.given !== undefined || !isMuchFoil) return [];
  const share = quantity(surface.sharePercent, '% of the car');
  return [evidenceAbout(scheme, 'sheen', 'much-foil', [at], 0, { share }, words)];
}
