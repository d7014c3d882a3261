/**
 * What belongs together? The rules of the build as sentences, how each stands on every alternative,
 * what they leave of the open choices, and where they cannot hold together.
 */
import { memo, useEffect, useMemo, useRef, useState } from 'react';
import { type Build, isOpen } from '../../build/build.ts';
import { combinationsInWords } from '../../build/choice/combination.ts';
import type { SightTable } from '../../car/table.ts';
import { useAfterwards } from '../afterwards.ts';
import { goTo } from '../area.ts';
import { ruleFactsOf } from '../sheet/compared.ts';
import { useWork } from '../store.ts';
import { Clash } from './Clash.tsx';
import { RuleForm } from './RuleForm.tsx';
import { RuleRow } from './RuleRow.tsx';
import './rules.css';
import { startRule, useRuling } from './ruling.ts';
import { breachesIn, clashWords, exampleOf } from './standing.ts';
import type { Thought } from './thinking.ts';
import { useThought } from './thought.ts';
import { needsScores } from './Would.tsx';

/** Rules shown before the rest is unfolded. */
const mostShown = 40;

/**
 * The section between part table and score sheets. Cars, scores and sentences come first: how the
 * rules stand after another finish is told a moment later, a change to the rules at once.
 */
export function Rules() {
  const { build, car } = useWork();
  const before = useAfterwards(build);
  const isFinishOnly = before.rules === build.rules && before.parts === build.parts;
  return <RuleSection build={isFinishOnly ? before : build} sight={car.sight} />;
}

interface RuleSectionProps {
  readonly build: Build;
  readonly sight: SightTable;
}

const RuleSection = memo(function RuleSection({ build, sight }: RuleSectionProps) {
  const { draft, changing } = useRuling();
  const [isWhole, setWhole] = useState(false);
  const section = useRef<HTMLElement>(null);
  const thought = useThought(build, 'standing');
  const breaches = useMemo(() => breachesIn(build, ruleFactsOf(build, sight)), [build, sight]);
  const { rules } = build;
  // Two rules may say the same; their places tell them apart.
  const placed = rules.map((rule, at) => ({ rule, at, key: `${at} ${JSON.stringify(rule)}` }));
  const shown = isWhole ? placed : placed.slice(0, mostShown);
  const focusNext = useRef<string>(undefined);
  const focusOn = (at: number | undefined): void => {
    focusNext.current = at === undefined ? '.rule-add' : `[data-rule="${at}"]`;
  };
  useEffect(() => {
    // Once what was asked for is there; a rule beyond those shown leaves the focus to the button.
    const wanted = focusNext.current;
    focusNext.current = undefined;
    if (wanted === undefined) return;
    const found = section.current?.querySelector<HTMLElement>(wanted);
    (found ?? section.current?.querySelector<HTMLElement>('.rule-add'))?.focus();
  });
  return (
    <section ref={section} className="rules-section" aria-labelledby="rules-title">
      <h2 id="rules-title" className="section-title">
        Rules
        <small role="status">{totalWords(rules.length, thought)}</small>
      </h2>
      <div className="rules-inside">
        {thought?.clash === undefined ? null : (
          <Clash clash={thought.clash} onMended={() => focusOn(undefined)} />
        )}
        {rules.length === 0 && draft === undefined ? (
          <p className="rules-none">
            No rules yet. A rule says what belongs together: {exampleOf(build)}, no more than two
            bottles to buy. Alternatives that break one say so.
          </p>
        ) : null}
        {shown.length === 0 ? null : (
          <ol className="rules" aria-label="Rules">
            {shown.map(({ rule, at, key }) =>
              rule === changing ? (
                <li key={key}>
                  <RuleForm onDone={focusOn} />
                </li>
              ) : (
                <RuleRow
                  key={key}
                  build={build}
                  rule={rule}
                  at={at}
                  breaches={breaches[at] ?? []}
                  clash={clashWords(thought?.clash?.rules, at)}
                  onGone={() => focusOn(undefined)}
                />
              ),
            )}
          </ol>
        )}
        {shown.length === rules.length ? null : (
          <button type="button" className="text-button" onClick={() => setWhole(true)}>
            All {rules.length} rules
          </button>
        )}
        {rules.some(needsScores) ? (
          <p className="quiet rules-limits">
            Rules on colour elsewhere, share and date are judged on each alternative; whether any
            combination keeps them is not counted.
          </p>
        ) : null}
        {draft !== undefined && changing === undefined ? (
          <RuleForm onDone={focusOn} />
        ) : (
          <button type="button" className="button rule-add" onClick={() => startRule()}>
            Add a rule
          </button>
        )}
        {build.parts.some((part) => isOpen(part) && !part.absent) ? (
          <button type="button" className="button rule-rank" onClick={() => goTo('ranking')}>
            Rank every combination
          </button>
        ) : null}
      </div>
    </section>
  );
});

/** How many combinations there are, and how many keep the rules. */
function totalWords(rules: number, thought: Thought | undefined): string {
  if (thought === undefined) return 'Counting combinations …';
  const { all, keepingRules } = thought.count;
  const allowed = `The open choices allow ${combinationsInWords(all)}`;
  if (rules === 0) return `${allowed}.`;
  if (thought.verdict === 'cannot-hold') return `${allowed}; none keeps the rules.`;
  if (keepingRules === undefined) {
    return thought.verdict === 'can-hold'
      ? `${allowed}; at least one keeps the rules, and counting how many takes too long.`
      : `${allowed}; whether any keeps the rules takes too long to say.`;
  }
  if (keepingRules === all) return `${allowed}, and all of them keep the rules.`;
  return `${allowed}; ${keepingRules.toLocaleString('en-GB')} of them ${keepingRules === 1n ? 'keeps' : 'keep'} the rules.`;
}
