/**
 * The best combinations in rows: a table where there is room for a column a part, else a card each.
 * A finish that the row above does not wear stands out by its weight and its handle.
 */
import { useMemo, useSyncExternalStore } from 'react';
import { type Build, finishesByRef, letterOf, type OpenPart } from '../../build/build.ts';
import { nextSentence } from '../../ranking/answer/sure.ts';
import { whyAbove } from '../../ranking/answer/why.ts';
import { toBuySentence } from '../../ranking/answer/words.ts';
import { heldIn, partsWithChoice } from '../../ranking/held.ts';
import type { RankedRow } from '../../ranking/ranking.ts';
import { scrollable } from '../pieces/scrollable.ts';
import { useWork } from '../store.ts';
import { Hold } from './Hold.tsx';
import { canWear, placesBySign, signOfChoices } from './put.ts';
import { type Cell, RowCard, RowLines, type RowProps } from './Row.tsx';
import './rows.css';
import type { Answer } from './search.ts';

/** Whether a column for each part has room, at the size of letters there is: 60 rem. */
function isRoomyNow(): boolean {
  const rem = Number.parseFloat(getComputedStyle(document.documentElement).fontSize);
  return window.innerWidth >= 60 * rem;
}
const onResized = (tell: () => void): (() => void) => {
  window.addEventListener('resize', tell);
  return () => window.removeEventListener('resize', tell);
};

/**
 * Where a table of so many parts never scrolls sideways, its head is held beneath the cars: in every
 * window that shows a table, or only in wide ones. The style sheet says the same.
 */
function fitOf(parts: number): 'always' | 'wide' | 'never' {
  if (parts <= 7) return 'always';
  return parts <= 11 ? 'wide' : 'never';
}

/** Least width of a table: narrow columns rather than scrolling, roomy ones where it scrolls anyway. */
const leastRem = (parts: number): number => 18 + parts * (fitOf(parts) === 'never' ? 9 : 6);

interface RankedProps {
  readonly answer: Answer;
  readonly isStale: boolean;
}

/** All rows. */
export function Ranked({ answer, isStale }: RankedProps) {
  const { question } = answer;
  const isRoomy = useSyncExternalStore(onResized, isRoomyNow);
  const columns = useMemo(() => partsWithChoice(question.build), [question.build]);
  const rows = useRows(answer, columns);
  if (rows.length === 0) return null;
  const holds = columns.map((part) => <Hold key={part.id} part={part} build={question.build} />);
  const className = isStale ? 'ranking-strip is-stale' : 'ranking-strip';
  if (!isRoomy) {
    return (
      <div className={className}>
        <details className="ranking-holds">
          <summary>Hold a part at one finish</summary>
          <div className="fields">{holds}</div>
        </details>
        <ol className="ranking-cards" aria-label="The best combinations">
          {rows.map((row) => (
            <RowCard key={row.number} {...row} />
          ))}
        </ol>
      </div>
    );
  }
  return (
    <div
      className={className}
      data-fits={fitOf(columns.length)}
      {...scrollable('The best combinations')}
    >
      <table className="ranking-table" style={{ minInlineSize: `${leastRem(columns.length)}rem` }}>
        <colgroup>
          <col className="ranking-col-number" />
          <col className="ranking-col-overall" />
          {columns.map(({ id }) => (
            <col key={id} />
          ))}
          <col className="ranking-col-put" />
        </colgroup>
        <thead>
          <tr>
            <th scope="col" className="ranking-head is-first">
              Place
            </th>
            <th scope="col" className="ranking-head">
              Overall
            </th>
            {columns.map((part, at) => (
              <th key={part.id} scope="col" className="ranking-head">
                {holds[at]}
              </th>
            ))}
            <th scope="col" className="ranking-head is-last">
              <span className="unseen">On the stage</span>
            </th>
          </tr>
        </thead>
        {rows.map((row) => (
          <RowLines key={row.number} {...row} />
        ))}
      </table>
    </div>
  );
}

function useRows({ question, ranking, about }: Answer, columns: readonly OpenPart[]): RowProps[] {
  const { build: asked, held } = question;
  const { rows } = ranking;
  const { build } = useWork();
  const here = useMemo(() => heldIn(asked, held), [asked, held]);
  const places = useMemo(() => placesBySign(build), [build]);
  const finishes = finishesByRef(asked);
  const { light } = asked.viewing;
  return rows.map((row, at): RowProps => {
    const choices = { ...here, ...row.choices };
    const above = rows[at - 1];
    const next = rows[at + 1];
    const surely = about.sureness?.rows[at];
    const place = places.get(signOfChoices(build, choices));
    return {
      number: at + 1,
      row,
      cells: columns.map((part): Cell => {
        const ref = choices[part.id];
        return {
          part: part.id,
          name: part.name,
          finish: finishes.get(ref ?? ''),
          isNew: above === undefined || ref !== { ...here, ...above.choices }[part.id],
        };
      }),
      light,
      letter: place === undefined ? undefined : letterOf(place),
      standsAs: place === undefined ? undefined : build.alternatives[place]?.id,
      choices,
      canStand: canWear(build, choices),
      why: next && reasonFor(asked, row, next),
      close: next && surely?.isCloseToNext ? nextSentence(surely, next.sheet.letter) : undefined,
      toBuy: toBuySentence(asked, row),
    };
  });
}

/** Why a row stands above the next, as long as these two are neighbours. */
const reasons = new WeakMap<RankedRow, { readonly next: RankedRow; readonly sentence: string }>();

function reasonFor(build: Build, row: RankedRow, next: RankedRow): string {
  const known = reasons.get(row);
  if (known?.next === next) return known.sentence;
  const { sentence } = whyAbove(build, row, next);
  reasons.set(row, { next, sentence });
  return sentence;
}
