/**
 * The plain way to a ranking: every combination of a small build as an alternative of its own,
 * compared by the score sheet, those that break a rule left out, the rest sorted.
 */
import { readFileSync } from 'node:fs';
import { bottlesToBuy } from '../../../src/build/bottles.ts';
import { assignmentOf, type Build, isOpen, type Rule } from '../../../src/build/build.ts';
import { buildFrom } from '../../../src/build/read/document.ts';
import type { SightTable } from '../../../src/car/table.ts';
import type { Draw } from '../../../src/ground/draw.ts';
import type { RankedRow, Ranking } from '../../../src/ranking/ranking.ts';
import { compareAlternatives } from '../../../src/score/sheet.ts';

const read = (path: string): unknown =>
  JSON.parse(readFileSync(new URL(`../../../${path}`, import.meta.url), 'utf8'));
export const sight = read('models/roadster.sight.json') as SightTable;
export const demo: Build = buildFrom(read('src/build/demo.json'));
export const today = '2031-05-01';

/** The demo with only some of its parts open, the others at their first candidate. */
export const demoWith = (open: readonly string[], rules: readonly Rule[] = []): Build => ({
  ...demo,
  parts: demo.parts.map((part) => {
    if (!isOpen(part) || open.includes(part.id)) return part;
    const { candidates, ...others } = part;
    return { ...others, finish: candidates[0]!, painted: false };
  }),
  rules: [...rules],
  alternatives: [],
});

/** Every combination that keeps every rule, best first, as rows of a ranking. */
export function everyRow(build: Build): RankedRow[] {
  let all: Record<string, string>[] = [{}];
  for (const part of build.parts) {
    if (!isOpen(part)) continue;
    all = all.flatMap((worn) => part.candidates.map((ref) => ({ ...worn, [part.id]: ref })));
  }
  const alternatives = all.map((choices, at) => ({ id: `all-${at}`, name: `${at}`, choices }));
  const { alternatives: sheets } = compareAlternatives({ ...build, alternatives }, sight, {
    today,
    withoutCloseness: true,
  });
  return sheets
    .map((sheet, at) => ({ sheet, at }))
    .filter(({ sheet }) => sheet.broken.length === 0)
    .sort((one, other) => other.sheet.overall - one.sheet.overall)
    .map(({ sheet, at }, place): RankedRow => {
      const alternative = alternatives[at]!;
      const number = `${place + 1}`;
      return {
        choices: alternative.choices,
        sheet: { ...sheet, id: `rank-${number}`, letter: number, name: number },
        toBuy: bottlesToBuy(build, assignmentOf(build, alternative)),
      };
    });
}

/** The ranking made of them. */
export function everyRanking(build: Build, count: number): Ranking {
  const all = everyRow(build);
  const open = build.parts.filter(isOpen).filter(({ candidates }) => candidates.length > 1);
  return {
    open,
    combinations: open.reduce((product, { candidates }) => product * BigInt(candidates.length), 1n),
    rows: all.slice(0, count),
    isProved: true,
    atMost: all[0]?.sheet.overall ?? 0,
    steps: all.length,
  };
}

/** Open parts of the demo. */
export const openInDemo = demo.parts.filter(isOpen).map(({ id }) => id);

/** `count` different entries of a list, drawn. */
export function drawn<T>(list: readonly T[], count: number, draw: Draw): T[] {
  const left = [...list];
  return Array.from(
    { length: Math.min(count, left.length) },
    () => left.splice(draw.below(left.length), 1).at(0)!,
  );
}
