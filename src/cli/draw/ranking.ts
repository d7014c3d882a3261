/**
 * A ranking as a page of text: what is proved, the rows side by side with what each open part wears,
 * then why each stands above the next, and what the rules cost.
 */
import { type Build, finishesByRef } from '../../build/build.ts';
import { namesIn, ruleSentence } from '../../build/rule.ts';
import { appearanceOf } from '../../finish/appearance.ts';
import type { RuleCost, RuleCosts } from '../../ranking/answer/price.ts';
import { priceSentence } from '../../ranking/answer/priced.ts';
import { headSentence, nextSentence, type Sureness } from '../../ranking/answer/sure.ts';
import { whyAbove } from '../../ranking/answer/why.ts';
import { openSentence, standingSentence, toBuySentence } from '../../ranking/answer/words.ts';
import type { RankedRow, Ranking, Wanted } from '../../ranking/ranking.ts';
import { lightNames } from '../argument.ts';
import { harmless, type Screen, styled } from './screen.ts';
import { swatch } from './swatch.ts';
import { type Cell, hanging, type Row, tableOf } from './table.ts';

/** A ranking with what was found out about it. */
export interface Answered {
  readonly build: Build;
  readonly wanted: Wanted;
  readonly ranking: Ranking;
  readonly sureness: Sureness;
  /** Undefined where there is no rule. */
  readonly costs: RuleCosts | undefined;
}

/** Lines of the whole answer. */
export function rankingLines(screen: Screen, carName: string, answered: Answered): string[] {
  const { build, wanted, ranking, sureness } = answered;
  const told = (text: string): string[] => hanging(screen, '', 0, harmless(text));
  const light = lightNames[wanted.light ?? build.viewing.light];
  const distance = Math.round(wanted.distanceMm ?? build.viewing.distanceMm);
  const heading = [
    ...hanging(screen, '', 0, styled(screen, 'bold', harmless(build.name))),
    ...told(
      `${carName} at 1:${build.scale}, seen from ${distance} mm under ${light}; readiness counted ` +
        `from ${wanted.today}. ${openSentence(ranking)}`,
    ),
    ...told(standingSentence(ranking, { ...wanted, build })),
  ];
  if (ranking.rows.length === 0) return heading;
  return [
    ...heading,
    ...told(headSentence(sureness)),
    '',
    ...tableOf(screen, tableRows(screen, answered)),
    '',
    ...reasonLines(screen, answered),
    ...priceLines(screen, answered),
  ];
}

/** Parts down, places across. */
function tableRows(screen: Screen, { build, wanted, ranking }: Answered): Row[] {
  const finishes = finishesByRef(build);
  const light = wanted.light ?? build.viewing.light;
  const cells = new Map<string, Cell>();
  const cellOf = (ref: string | undefined): Cell => {
    const finish = finishes.get(ref ?? '');
    if (ref === undefined || finish === undefined) return { text: '' };
    const known = cells.get(ref);
    if (known !== undefined) return known;
    const cell = { text: harmless(finish.name), mark: swatch(screen, appearanceOf(finish, light)) };
    cells.set(ref, cell);
    return cell;
  };
  const { rows, open } = ranking;
  const rule: Row = { title: '', cells: [{ text: '' }] };
  return [
    { title: '', cells: rows.map(({ sheet }) => ({ text: sheet.letter })), isHeading: true },
    {
      title: 'Overall',
      cells: rows.map(({ sheet }) => ({ text: sheet.overall.toFixed(1) })),
      isHeading: true,
    },
    rule,
    ...open.map(
      ({ id, name }): Row => ({
        title: harmless(name),
        cells: rows.map(({ choices }) => cellOf(choices[id])),
      }),
    ),
    rule,
    {
      title: 'Bottles to buy',
      cells: rows.map(({ toBuy }) => ({
        text: toBuy.length === 0 ? 'none' : String(toBuy.length),
      })),
    },
  ];
}

/** Why each row stands above the next, how surely, and what has to be bought for it. */
function reasonLines(screen: Screen, { build, ranking, sureness }: Answered): string[] {
  const { rows } = ranking;
  const indent = String(rows.length).length + 2;
  return [
    styled(screen, 'bold', 'Why they stand in this order'),
    ...rows.flatMap((row, at) => {
      const next = rows[at + 1];
      const words = [...whyWords(build, row, next, at, sureness), toBuySentence(build, row)];
      return hanging(screen, `${at + 1}`.padStart(indent - 2), indent, harmless(words.join(' ')));
    }),
  ];
}

function whyWords(
  build: Build,
  row: RankedRow,
  next: RankedRow | undefined,
  at: number,
  sureness: Sureness,
): string[] {
  if (next === undefined) return [];
  const surely = sureness.rows[at];
  const isClose = surely?.isCloseToNext === true;
  const close = isClose ? [nextSentence(surely, next.sheet.letter)] : [];
  return [...close, whyAbove(build, row, next).sentence];
}

function priceLines(screen: Screen, { build, costs }: Answered): string[] {
  if (costs === undefined || costs.rules.length === 0) return [];
  return [
    '',
    styled(screen, 'bold', 'What each rule costs'),
    ...costs.rules.flatMap((cost) =>
      hanging(screen, '   ', 3, harmless(ruleWords(build, cost, costs))),
    ),
  ];
}

/** The rule itself, then its price. */
function ruleWords(build: Build, cost: RuleCost, costs: RuleCosts): string {
  const rule = build.rules[cost.rule];
  const price = priceSentence(build, cost, costs);
  return rule === undefined ? price : `${ruleSentence(rule, namesIn(build))}. ${price}`;
}
