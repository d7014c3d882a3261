/**
 * Is one alternative really ahead of another, given how uncertain the colours are? And where two are
 * apart in numbers yet too close to call, which colour makes it so?
 *
 * In: terms, two or more choices, weights, a seed. Out: in how many of 100 draws each stays ahead.
 * Monte Carlo propagation of the stated uncertainty [JCGM101]: one draw per finish, shared by all
 * its parts and all alternatives; u = RMS CIEDE2000, so σ = u/√3 in units of S_L, S_C and S_H along each axis
 * [Sharma2005]; ln GU with σ 0.15, above 60 GU 0.05 (our judgement). Families are held. Every finish
 * has draws of its own, seeded by its reference: what others wear leaves a pair's figure alone.
 */

import { type Draw, drawFrom, seedFor } from '../ground/draw.ts';
import { asLab, type Lab } from '../ground/unit.ts';
import type { ScoreKey } from './evidence.ts';
import { drawCount, glossSpread, glossSpreadShiny, sheenSteps, shinyGu } from './judgement.ts';
import { along } from './seen/curve.ts';
import type { Worn } from './seen/worn.ts';
import { overallOf, type Terms, termsOf } from './terms.ts';

const seed = 20_815;

type Choice = ArrayLike<number>;
type Weights = Readonly<Record<ScoreKey, number>>;

/** Share of 100 draws in which each choice (row) is ahead of each other (column); level is half. */
export function aheadIn100(terms: Terms, choices: readonly Choice[], weights: Weights): number[][] {
  const wins = choices.map(() => choices.map(() => 0));
  const slim = onlyChosen(terms, choices);
  const drawer = drawerFor(slim.terms);
  const costs = new Float64Array(6);
  for (let k = 0; k < drawCount; k++) {
    const moved = drawer();
    const drawn = replaced(slim.terms, (worn) => [moved.get(worn.ref)!.moved]);
    const overall = slim.choices.map((choice) => overallOf(drawn.costs(choice, costs), weights));
    overall.forEach((one, i) => {
      overall.forEach((other, j) => {
        wins[i]![j]! += won(one, other);
      });
    });
  }
  return wins.map((row) => row.map((sum) => (100 * sum) / drawCount));
}

/**
 * For each finish that two choices wear: in how many of 100 of the same draws the first is ahead
 * where that one colour is exactly as stated. Its gloss and everything else are drawn as before.
 */
export function aheadWhereSure(
  terms: Terms,
  choices: readonly [Choice, Choice],
  weights: Weights,
): ReadonlyMap<string, number> {
  const slim = onlyChosen(terms, choices);
  const drawer = drawerFor(slim.terms);
  const { candidates } = slim.terms;
  const refs = new Set(candidates.flatMap((list) => list.map(({ worn }) => worn.ref)));
  const wins = new Map([...refs].map((ref) => [ref, 0]));
  const costs = new Float64Array(6);
  for (let k = 0; k < drawCount; k++) {
    const moved = drawer();
    // Each finish stands twice among the candidates: moved, then with its colour as stated.
    const drawn = replaced(slim.terms, ({ ref }) => {
      const both = moved.get(ref)!;
      return [both.moved, both.sure];
    });
    for (const ref of refs) {
      const [one, other] = slim.choices.map((choice) => {
        const sure = Array.from(choice, (c, at) =>
          candidates[at]![c]!.worn.ref === ref ? 2 * c + 1 : 2 * c,
        );
        return overallOf(drawn.costs(sure, costs), weights);
      });
      wins.set(ref, wins.get(ref)! + won(one!, other!));
    }
  }
  return new Map([...wins].map(([ref, sum]) => [ref, (100 * sum) / drawCount]));
}

const won = (one: number, other: number): number => (one > other ? 1 : one === other ? 0.5 : 0);

/** The same terms with only the finishes some choice wears, so that draws touch nothing else. */
function onlyChosen(terms: Terms, choices: readonly Choice[]) {
  const kept = terms.candidates.map((_, at) => [...new Set(choices.map((choice) => choice[at]!))]);
  return {
    terms: {
      ...terms,
      candidates: terms.candidates.map((list, at) => kept[at]!.map((c) => list[c]!)),
    },
    choices: choices.map((choice) =>
      terms.candidates.map((_, at) => kept[at]!.indexOf(choice[at]!)),
    ),
  };
}

/** The same terms with other finishes in the place of each candidate. */
const replaced = (terms: Terms, to: (worn: Worn) => readonly Worn[]): Terms =>
  termsOf(
    {
      ...terms,
      candidates: terms.candidates.map((list) =>
        list.flatMap((candidate) => to(candidate.worn).map((worn) => ({ ...candidate, worn }))),
      ),
    },
    terms,
  );

/** A finish moved by one draw of its uncertainty: altogether, and in its gloss alone. */
interface Moved {
  readonly moved: Worn;
  readonly sure: Worn;
}

/** Moves every finish of the terms, anew at each call. */
function drawerFor({ candidates }: Terms): () => ReadonlyMap<string, Moved> {
  const worn = new Map(candidates.flatMap((list) => list.map((one) => [one.worn.ref, one.worn])));
  const streams = [...worn].map(([ref, one]) => ({
    ref,
    one,
    draw: drawFrom(seedFor(ref, seed)),
  }));
  return () => new Map(streams.map(({ ref, one, draw }) => [ref, movedBy(one, draw)]));
}

function movedBy(worn: Worn, draw: Draw): Moved {
  const sigma = worn.deltaE / Math.sqrt(3);
  const [towardL, towardC, towardH] = [draw.normal(), draw.normal(), draw.normal()];
  const gloss = draw.normal() * (worn.gloss60 > shinyGu ? glossSpreadShiny : glossSpread);
  const move = (lab: Lab): Lab => movedLab(lab, sigma * towardL, sigma * towardC, sigma * towardH);
  const gloss60 = Math.min(100, worn.gloss60 * Math.exp(gloss));
  const sure: Worn = { ...worn, gloss60, sheenStep: along(sheenSteps, gloss60) };
  const moved: Worn = {
    ...sure,
    lab: move(worn.lab),
    underLights: worn.underLights.map(move),
    toEyes: worn.toEyes.map(move),
  };
  return { moved, sure };
}

/** Lab moved by steps along lightness, chroma and hue, in units of CIEDE2000's weights there. */
function movedLab(lab: Lab, stepL: number, stepC: number, stepH: number): Lab {
  const [lightness, a, b] = lab;
  const chroma = Math.hypot(a, b);
  const hue = Math.atan2(b, a);
  const around = (lightness - 50) ** 2;
  const weightL = 1 + (0.015 * around) / Math.sqrt(20 + around);
  const weightC = 1 + 0.045 * chroma;
  const weightH = 1 + 0.015 * chroma;
  const moved = chroma + stepC * weightC;
  const across = stepH * weightH;
  return asLab(
    Math.min(100, Math.max(0, lightness + stepL * weightL)),
    moved * Math.cos(hue) - across * Math.sin(hue),
    moved * Math.sin(hue) + across * Math.cos(hue),
  );
}
