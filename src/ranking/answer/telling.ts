/**
 * Which finding tells two rows apart? What the lower has against it and the upper has not, or has
 * less of; where there is none, what is well on the upper and is not found on the lower.
 *
 * Two sheets, weights, and the scores in which the upper gains. A finding counts by the points that
 * it costs the lower sheet beyond what its like costs the upper.
 */
import type { Weights } from '../../build/build.ts';
import type { ScoreSheet } from '../../score/comparison.ts';
import type { Evidence, ScoreKey } from '../../score/evidence.ts';
import { gainWithout } from '../../score/headline.ts';
import { sentenceOf } from '../../score/sentence.ts';

/** A finding on one of two sheets that is not on the other. */
export interface Telling {
  readonly finding: Evidence;
  readonly sentence: string;
}

/** What the lower row has against it. */
export interface Fault extends Telling {
  /** The upper row has the same trouble with the same parts, only less of it. */
  readonly isLess: boolean;
}

/** The finding that costs the lower sheet most beyond what it costs the upper, from `least` points. */
export function faultOf(
  upper: ScoreSheet,
  lower: ScoreSheet,
  weights: Weights,
  gained: ReadonlySet<ScoreKey>,
  least: number,
): Fault | undefined {
  const said = new Set(upper.evidence.map(sentenceOf));
  let most = least;
  let fault: Fault | undefined;
  for (const finding of lower.evidence) {
    // Bottles, days and stripping are counted, not quoted.
    if (finding.score === 'readiness' || !gained.has(finding.score)) continue;
    const alike = upper.evidence.filter((one) => isAbout(one, finding));
    const spared = Math.max(0, ...alike.map(({ cost }) => cost));
    const cost = gainWithout(lower, { ...finding, cost: finding.cost - spared }, weights);
    const sentence = sentenceOf(finding);
    if (cost <= most || said.has(sentence)) continue;
    most = cost;
    fault = { finding, sentence, isLess: alike.length > 0 };
  }
  return fault;
}

const isAbout = (one: Evidence, other: Evidence): boolean =>
  one.score === other.score &&
  one.kind === other.kind &&
  one.parts.some((part) => other.parts.includes(part));

/** Findings that speak well of a row. */
const praise: ReadonlySet<string> = new Set([
  'contrast/reads',
  'accent/echoed',
  'accent/body-carried-in',
  'sheen/deliberate',
  'steadiness/steady',
]);

/** What is well on the upper sheet and is not found on the lower. */
export function meritOf(
  upper: ScoreSheet,
  lower: ScoreSheet,
  gained: ReadonlySet<ScoreKey>,
): Telling | undefined {
  const said = new Set(lower.evidence.map(sentenceOf));
  for (const finding of upper.evidence) {
    const sentence = sentenceOf(finding);
    const isPraise = praise.has(`${finding.score}/${finding.kind}`);
    if (isPraise && gained.has(finding.score) && !said.has(sentence)) return { finding, sentence };
  }
  return undefined;
}
