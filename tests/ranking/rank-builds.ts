/**
 * Seeded builds to rank, and every combination of each through the sheet's own terms and rules, one by
 * one: the oracle that rankings are held against. The parts are the demo's, the finishes those of the
 * racks that come with it, everything else is drawn.
 */
import { readFileSync } from 'node:fs';
import { parse } from 'valibot';
import {
  type Build,
  buildSchema,
  type FinishRef,
  isOpen,
  type Part,
  type Rule,
  refOf,
} from '../../src/build/build.ts';
import { brokenRules } from '../../src/build/rule.ts';
import type { SightTable } from '../../src/car/table.ts';
import type { Draw } from '../../src/ground/draw.ts';
import type { Judged } from '../../src/score/judged.ts';
import { overallOf } from '../../src/score/terms.ts';

const read = (path: string): string =>
  readFileSync(new URL(`../../${path}`, import.meta.url), 'utf8');

export const sight: SightTable = JSON.parse(read('models/roadster.sight.json'));
export const demo: Build = parse(buildSchema, JSON.parse(read('src/build/demo.json')));
export const today = '2031-05-01';

/** The demo with every finish of both racks embedded. */
export const stocked: Build = parse(buildSchema, {
  ...demo,
  finishes: ['bench-drawer', 'corner-shop'].flatMap((rack) =>
    JSON.parse(read(`palettes/${rack}.json`)).finishes.map((finish: object) => ({
      rack,
      ...finish,
    })),
  ),
});

/** How many parts are open, with how many candidates each. */
export interface Size {
  readonly open: number;
  readonly candidates: number;
}

const drawn = <T>(draw: Draw, list: readonly T[]): T => list[draw.below(list.length)]!;
const chance = (draw: Draw, share: number): boolean => draw.uniform() < share;

/** A build with at most so many open parts and candidates, and rules of all kinds among them. */
export function drawnBuild(draw: Draw, { open, candidates }: Size): Build {
  // A few finishes for the whole build, so that colours meet again and rules are called upon.
  const refs = stocked.finishes.map(refOf);
  const palette = Array.from({ length: 4 + draw.below(14) }, () => drawn(draw, refs));
  const isDrawn = new Set(Array.from({ length: open }, () => drawn(draw, stocked.parts).id));
  const parts = stocked.parts.map(({ id, name, covers, ...settled }): Part => {
    const base = { id, name, covers, absent: !isDrawn.has(id) && chance(draw, 0.05) };
    if (isDrawn.has(id)) {
      const list = Array.from({ length: 1 + draw.below(candidates) }, () => drawn(draw, palette));
      return { ...base, candidates: [...new Set(list)] };
    }
    const usual = 'finish' in settled ? settled.finish : drawn(draw, palette);
    return {
      ...base,
      finish: chance(draw, 0.5) ? drawn(draw, palette) : usual,
      painted: chance(draw, 0.3),
    };
  });
  const build: Build = {
    ...stocked,
    parts,
    alternatives: [],
    tonal: chance(draw, 0.2),
    mustRead: parts.flatMap(({ id }) => (chance(draw, 0.1) ? [id] : [])),
    weights: {
      contrast: draw.below(40),
      accent: 5 + draw.below(40),
      sheen: draw.below(40),
      harmony: draw.below(3) * 10,
      steadiness: draw.below(20),
      readiness: draw.below(3) * 10,
    },
    rules: Array.from({ length: draw.below(5) }, () => drawnRule(draw, parts, palette)),
  };
  return chance(draw, 0.4) ? { ...build, wantedBy: `2031-05-${10 + draw.below(20)}` } : build;
}

function drawnRule(draw: Draw, parts: readonly Part[], palette: readonly FinishRef[]): Rule {
  const open = parts.filter(isOpen);
  const somePart = (): Part => (chance(draw, 0.85) ? drawn(draw, open) : drawn(draw, parts));
  const worn = (part: Part): FinishRef =>
    isOpen(part) ? drawn(draw, part.candidates) : part.finish;
  const wears = (): { part: string; finish: FinishRef } => {
    const part = somePart();
    return { part: part.id, finish: worn(part) };
  };
  switch (draw.below(8)) {
    case 0:
      return { kind: 'same', parts: [drawn(draw, open).id, somePart().id] };
    case 1: {
      const wanted = somePart();
      const oneOf = [worn(wanted), drawn(draw, palette)];
      return { kind: 'if-then', when: wears(), wants: { part: wanted.id, oneOf } };
    }
    case 2:
      return { kind: 'never-together', first: wears(), second: wears() };
    case 3:
      return { kind: 'must-echo', part: somePart().id };
    case 4:
      return { kind: 'most-new-bottles', count: draw.below(10) };
    case 5:
      return { kind: 'most-finishes', count: 6 + draw.below(10) };
    case 6:
      return { kind: 'ready-by', date: `2031-05-${10 + draw.below(20)}` };
    default:
      return { kind: 'most-share', part: somePart().id, percent: draw.below(50) };
  }
}

/** A combination as the sheet has it. */
export interface Combination {
  /** Finish of every open part on the model, by part id. */
  readonly choices: Readonly<Record<string, FinishRef>>;
  readonly overall: number;
  readonly keepsRules: boolean;
}

/** Every combination of a build, in the order of candidates, the last open part moving fastest. */
export function everyCombination({ build, terms, choiceOf, factsOf }: Judged): Combination[] {
  const open = build.parts.filter(isOpen);
  const settled = build.parts.flatMap((part) =>
    isOpen(part) ? [] : [[part.id, part.finish] as const],
  );
  const costs = new Float64Array(6);
  let choices: Record<string, FinishRef>[] = [{}];
  for (const { id, candidates } of open) {
    choices = choices.flatMap((some) => candidates.map((ref) => ({ ...some, [id]: ref })));
  }
  return choices.map((some) => {
    const assignment = new Map([...settled, ...Object.entries(some)]);
    const choice = choiceOf(assignment);
    return {
      choices: some,
      overall: overallOf(terms.costs(choice, costs), build.weights),
      keepsRules: brokenRules(build, assignment, factsOf(choice)).length === 0,
    };
  });
}
