/**
 * Where open parts share candidates: one press makes the alternatives that are all in one of them,
 * and says before it does which rules one of those would break.
 */
import { useMemo } from 'react';
import { assignmentOf, type Build, letterOf } from '../../build/build.ts';
import { alternativePerShared, toCompare } from '../../build/edit/alternative.ts';
import { isAllIn, type Shared } from '../../build/edit/shared.ts';
import { fittedBuild } from '../../build/fitted.ts';
import { brokenRules, listed, namesIn } from '../../build/rule.ts';
import type { SightTable } from '../../car/table.ts';
import { ruleFactsOf } from '../sheet/compared.ts';
import { edit, endStep, useWork } from '../store.ts';
import './alternatives.css';

/** More finishes are counted rather than named. */
const mostNamed = 4;

/** The button and what it would do; nothing where nothing is shared. */
export function PerShared({
  part,
}: {
  /** Only if it would wear one of them. */ readonly part?: string;
}) {
  const { build, car } = useWork();
  const found = toCompare(build);
  const breaks = useMemo(() => breaksOf(build, car.sight), [build, car]);
  if (found === undefined) return null;
  const { missing, there } = found;
  if (part !== undefined && !missing.some(({ parts }) => parts.includes(part))) return null;
  const names = namesIn(build);
  return (
    <div className="per-shared">
      <button
        type="button"
        className={part === undefined ? 'button button-strong' : 'button'}
        onClick={() => {
          endStep();
          edit(alternativePerShared);
        }}
      >
        {wordsOf(missing.map(({ finish }) => names.finish(finish)))}
      </button>
      <p className="quiet">
        {partsWords(missing, names.part)}
        {there.length === 0 ? '' : ` ${thereWords(build, there)}.`}
      </p>
      {breaks.map((words) => (
        <p key={words}>{words}</p>
      ))}
    </div>
  );
}

/** `One all in Duck egg, one all in Copper pan`. */
function wordsOf(finishes: readonly string[]): string {
  if (finishes.length > mostNamed) return `One all in each of ${finishes.length} finishes`;
  const words = finishes.map((finish) => `one all in ${finish}`).join(', ');
  return words.charAt(0).toUpperCase() + words.slice(1);
}

const thereWords = (build: Build, there: readonly Shared[]): string =>
  there
    .map((one) => {
      const at = build.alternatives.findIndex(({ choices }) => isAllIn(choices, one));
      return `${letterOf(at)} wears ${namesIn(build).finish(one.finish)} wherever it may already`;
    })
    .join('; ');

/** Which parts wear it together, where that is the same for each. */
function partsWords(missing: readonly Shared[], nameOf: (part: string) => string): string {
  const [first, ...others] = missing.map(({ parts }) => listed(parts.map(nameOf)));
  const isOne = others.every((parts) => parts === first);
  return isOne ? `On ${first} together.` : 'Each on all open parts that may wear it.';
}

/** The rules that an alternative still to be made would break, told beforehand. */
function breaksOf(build: Build, sight: SightTable): string[] {
  if (build.rules.length === 0) return [];
  const made = alternativePerShared(build);
  if (made === build) return [];
  const facts = ruleFactsOf(made, sight);
  return made.alternatives.flatMap((alternative, at) =>
    build.alternatives.includes(alternative)
      ? []
      : brokenRules(fittedBuild(made), assignmentOf(made, alternative), facts[at]!).map(
          ({ sentence }) => `${alternative.name} would break a rule. ${sentence}`,
        ),
  );
}
