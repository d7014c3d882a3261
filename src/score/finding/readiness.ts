/** Why the readiness score is what it is: bottles to buy, days, stripping. */
import type { Evidence } from '../evidence.ts';
import { bottleCost, stripCost } from '../judgement.ts';
import { lateCost, readinessOf } from '../six/readiness.ts';
import { evidenceAbout, namesOf, quantity, type Scheme, surfaceAt } from './scheme.ts';

/** Evidence for readiness; `bottleNames` gives the names of bottles by id. */
export function readinessEvidence(
  scheme: Scheme,
  bottleNames: ReadonlyMap<string, string>,
): Evidence[] {
  const { candidates, daysWanted } = scheme.terms;
  const { bottles, days, slowest, stripped } = readinessOf(candidates, scheme.choice);
  const found: Evidence[] = [];
  for (const bottle of bottles) {
    const needing = candidates.flatMap((list, at) =>
      list[scheme.choice[at]!]!.preparation.toBuy.includes(bottle) ? [at] : [],
    );
    const words = {
      bottle: bottleNames.get(bottle) ?? bottle,
      parts: namesOf(scheme, needing),
    };
    found.push(evidenceAbout(scheme, 'readiness', 'to-buy', needing, bottleCost, {}, words));
  }
  for (const at of stripped) {
    const words = { part: surfaceAt(scheme, at).name };
    found.push(evidenceAbout(scheme, 'readiness', 'to-strip', [at], stripCost, {}, words));
  }
  const numbers = { days: quantity(days, 'days') };
  const words = { part: surfaceAt(scheme, slowest).name };
  if (daysWanted !== undefined && days > daysWanted) {
    const late = { ...numbers, late: quantity(days - daysWanted, 'days') };
    const cost = lateCost(days - daysWanted);
    found.push(evidenceAbout(scheme, 'readiness', 'late', [slowest], cost, late, words));
  } else if (days > 0) {
    const kind = daysWanted === undefined ? 'days-needed' : 'in-time';
    found.push(evidenceAbout(scheme, 'readiness', kind, [slowest], 0, numbers, words));
  }
  if (bottles.size === 0 && stripped.length === 0) {
    found.push(evidenceAbout(scheme, 'readiness', 'all-on-hand', [], 0));
  }
  return found;
}
