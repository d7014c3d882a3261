/** What a rule would do before it is put in place: what it says, leaves, breaks and contradicts. */
import { useMemo } from 'react';
import type { Rule } from '../../build/build.ts';
import { combinationsInWords } from '../../build/choice/combination.ts';
import { addRule, removeRule, replaceRule } from '../../build/edit/rule.ts';
import { listed } from '../../build/rule.ts';
import { useRuleFacts } from '../sheet/compared.ts';
import { useWork } from '../store.ts';
import { Sentence } from './Sentence.tsx';
import { breachesIn, clashWords, idleWords, togetherByReason } from './standing.ts';
import type { Thought } from './thinking.ts';
import { useThought } from './thought.ts';

interface WouldProps {
  readonly rule: Rule;
  /** The rule it would stand in the place of. */
  readonly changing: Rule | undefined;
  /** Where it would stand, from 0. */
  readonly at: number;
}

/** Whether the rule can be counted, or only judged on each alternative. */
export const needsScores = ({ kind }: Rule): boolean =>
  kind === 'must-echo' || kind === 'most-share' || kind === 'ready-by';

/** The sentence, and beneath it what would follow. */
export function Would({ rule, changing, at }: WouldProps) {
  const { build } = useWork();
  const facts = useRuleFacts();
  const words = JSON.stringify(rule);
  const after = useMemo(() => {
    const written = JSON.parse(words) as Rule;
    return changing === undefined ? addRule(build, written) : replaceRule(build, at, written);
  }, [build, words, changing, at]);
  // A rule that is being changed still stands in the build: what it leaves is held against none.
  const without = useMemo(
    () => (changing === undefined ? undefined : removeRule(build, at)),
    [build, changing, at],
  );
  const standing = useThought(build, 'standing');
  const others = useThought(without, 'without');
  const before = changing === undefined ? standing : others;
  const thought = useThought(after, 'written');
  const breaches = breachesIn(after, facts)[at] ?? [];
  const idle = idleWords(after, rule);
  return (
    <>
      <p className="rule-sentence">
        <Sentence rule={rule} />
      </p>
      <ul>
        <li>{leaving(rule, before, thought)}</li>
        {togetherByReason(breaches).map(({ letters, why }) => (
          <li key={why} className="rule-breach">
            {letters} would break it: {why}.
          </li>
        ))}
        {breaches.length === 0 ? <li>{keptBy(build.alternatives.length)}</li> : null}
        {idle === undefined ? null : <li>{idle}</li>}
        {thought?.clash === undefined ? null : (
          <li className="rule-breach">{clashing(thought.clash.rules, at)}</li>
        )}
      </ul>
    </>
  );
}

const keptBy = (alternatives: number): string => {
  if (alternatives === 0) return 'There is no alternative yet to break it.';
  return alternatives === 1 ? 'The one alternative keeps it.' : 'Every alternative keeps it.';
};

/** What would be left of the combinations. */
function leaving(rule: Rule, before: Thought | undefined, after: Thought | undefined): string {
  if (needsScores(rule)) {
    return 'It is judged on each alternative; whether any combination keeps it is not counted.';
  }
  if (after === undefined) return 'Counting what it would leave …';
  const { all, keepingRules } = after.count;
  if (keepingRules === undefined) return 'Counting what it would leave takes too long here.';
  const left = `It would leave ${combinationsInWords(keepingRules)} of ${all.toLocaleString('en-GB')}`;
  const now = before?.count.keepingRules;
  if (now === undefined) return `${left}.`;
  return now === keepingRules
    ? `${left}, as many as without it.`
    : `${left}; without it ${now.toLocaleString('en-GB')} keep the rules.`;
}

/** Which rules it clashes with, or that others clash without it. */
const clashing = (rules: readonly number[], at: number): string =>
  clashWords(rules, at) ??
  `Rules ${listed(rules.map((rule) => String(rule + 1)))} cannot hold as it is; mend those first.`;
