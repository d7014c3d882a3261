/**
 * What of the overall is no sum over parts, pairs and bottles? The accent balance, and days late; and
 * two rules that ask about colours on the whole car, `must-echo` and `most-share`. Given as the rest
 * of a cost network: one measure serves for cost and bound, since with nothing undecided the least
 * that an assignment can cost is what it costs.
 */
import type { Rule } from '../../build/build.ts';
import type { Judged } from '../../score/judged.ts';
import { lateCost } from '../../score/six/readiness.ts';
import { never, type Rest } from '../network.ts';
import type { Shares } from '../problem/shares.ts';
import type { Variables } from '../problem/variables.ts';
import { AccentBound } from './accent.ts';
import { Outlook } from './outlook.ts';
import { canBeAccent } from './prospect.ts';

type CarRule = Extract<Rule, { kind: 'must-echo' | 'most-share' }>;
/** Whether a rule asks about colours on the whole car. */
export const isCarRule = (rule: Rule): rule is CarRule =>
  rule.kind === 'must-echo' || rule.kind === 'most-share';

/** The rest of a build's network; undefined where everything is a sum. */
export function restOf(judged: Judged, variables: Variables, shares: Shares): Rest | undefined {
  const { terms, build } = judged;
  const rules = build.rules.filter(isCarRule);
  const isLookedAt = (family: number): boolean =>
    rules.length > 0 || canBeAccent(terms.families[family]!);
  const outlook = new Outlook(terms, variables, isLookedAt);
  const accent = shares.accent > 0 ? new AccentBound(terms, variables, outlook) : undefined;
  const late = lateOf(judged, variables, shares);
  const breaks = rules.map((rule) => breachOf(rule, judged, outlook));
  if (accent === undefined && late === undefined && breaks.length === 0) return undefined;
  const least = (values: Int32Array): number => {
    outlook.look(values);
    if (breaks.some((isBroken) => isBroken())) return never;
    const lateness = late?.(values) ?? 0;
    const isBounded = outlook.isQuick || !values.includes(-1);
    if (accent === undefined || !isBounded) return lateness;
    return lateness + shares.accent * accent.least(values);
  };
  return { cost: least, bound: least };
}

/** Whether what the outlook has been shown breaks the rule, however the rest is decided. */
function breachOf(rule: CarRule, { terms }: Judged, outlook: Outlook): () => boolean {
  const at = terms.scene.positions.get(rule.part);
  // A part that shows nowhere has no colour to repeat, and takes no share.
  if (at === undefined) return () => rule.kind === 'must-echo';
  return () => {
    const family = outlook.familyAt[at]!;
    if (family < 0) return false;
    const { mostZones, leastSharePercent } = outlook.prospect(family);
    return rule.kind === 'must-echo' ? mostZones < 2 : leastSharePercent > rule.percent;
  };
}

/** Cost of being late so far; undefined where nothing can be late. */
function lateOf({ terms }: Judged, variables: Variables, { readiness }: Shares) {
  const { candidates, daysWanted } = terms;
  if (daysWanted === undefined || readiness === 0) return undefined;
  const days = variables.slots.map(({ refs }) => new Float64Array(refs.length));
  let certain = 0;
  variables.of.forEach((variable, at) => {
    const all = candidates[at]!;
    const daysOf = (a: number): number => all[variables.candidateOf[at]![a]!]!.preparation.days;
    if (variable < 0) certain = Math.max(certain, daysOf(0));
    else
      days[variable]!.forEach((now, a, own) => {
        own[a] = Math.max(now, daysOf(a));
      });
  });
  const fewest = days.map((own) => Math.min(...own));
  return (values: Int32Array): number => {
    let latest = certain;
    for (let i = 0; i < values.length; i++) {
      latest = Math.max(latest, values[i]! < 0 ? fewest[i]! : days[i]![values[i]!]!);
    }
    return readiness * lateCost(latest - daysWanted);
  };
}
