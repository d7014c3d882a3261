/**
 * Is one alternative really ahead of another, given how uncertain the colours are?
 *
 * In: terms, two or more choices, weights, a seed. Out: in how many of 100 draws each stays ahead.
 * Monte Carlo propagation of the stated uncertainty [JCGM101]: one draw per finish, shared by all
 * its parts and all alternatives; u = RMS CIEDE2000, so σ = u/√3 in units of S_L, S_C and S_H along each axis
 * [Sharma2005]; ln GU with σ 0.15, above 60 GU 0.05 (our judgement). Families are held.
 */

import { type Draw, drawFrom } from '../ground/draw.ts';
import { asLab, type Lab } from '../ground/unit.ts';
import type { ScoreKey } from './evidence.ts';
import { drawCount, glossSpread, glossSpreadShiny, sheenSteps, shinyGu } from './judgement.ts';
import { along } from './seen/curve.ts';
import type { Worn } from './seen/worn.ts';
import { overallOf, type Terms, termsOf } from './terms.ts';

const seed = 20_815;

/** Share of 100 draws in which each choice (row) is ahead of each other (column); level is half. */
export function aheadIn100(
  terms: Terms,
  choices: readonly ArrayLike<number>[],
  weights: Readonly<Record<ScoreKey, number>>,
): number[][] {
  const wins = choices.map(() => choices.map(() => 0));
  const draw = drawFrom(seed);
  const slim = onlyChosen(terms, choices);
  const costs = new Float64Array(6);
  for (let k = 0; k < drawCount; k++) {
    const drawn = redrawn(slim.terms, draw);
    const overall = slim.choices.map((choice) => overallOf(drawn.costs(choice, costs), weights));
    overall.forEach((one, i) => {
      overall.forEach((other, j) => {
        wins[i]![j]! += one > other ? 1 : one === other ? 0.5 : 0;
      });
    });
  }
  return wins.map((row) => row.map((won) => (100 * won) / drawCount));
}

/** The same terms with only the finishes some choice wears, so that draws touch nothing else. */
function onlyChosen(terms: Terms, choices: readonly ArrayLike<number>[]) {
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

/** Terms in which every finish has been moved by one draw of its uncertainty. */
function redrawn(terms: Terms, draw: Draw): Terms {
  const moved = new Map<string, Worn>();
  const candidates = terms.candidates.map((list) =>
    list.map((candidate) => {
      const { worn } = candidate;
      let now = moved.get(worn.ref);
      if (now === undefined) {
        now = movedBy(worn, draw);
        moved.set(worn.ref, now);
      }
      return { ...candidate, worn: now };
    }),
  );
  return termsOf({ ...terms, candidates }, terms.families);
}

function movedBy(worn: Worn, draw: Draw): Worn {
  const sigma = worn.deltaE / Math.sqrt(3);
  const [towardL, towardC, towardH] = [draw.normal(), draw.normal(), draw.normal()];
  const gloss = draw.normal() * (worn.gloss60 > shinyGu ? glossSpreadShiny : glossSpread);
  const move = (lab: Lab): Lab => movedLab(lab, sigma * towardL, sigma * towardC, sigma * towardH);
  const gloss60 = Math.min(100, worn.gloss60 * Math.exp(gloss));
  const lab = move(worn.lab);
  return {
    ...worn,
    lab,
    underLights: worn.underLights.map(move),
    toEyes: worn.toEyes.map(move),
    gloss60,
    sheenStep: along(sheenSteps, gloss60),
  };
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
