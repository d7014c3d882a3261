/**
 * Every weight, threshold and curve the scores use, in one place.
 *
 * Where a source is named the number is published; everything else is our judgement, tried on
 * invented schemes for one car, scaled ×0.7–1.4 at random without changing which schemes lead.
 * All curves run through the listed points, straight between them and flat outside.
 */
import type { Curve } from './seen/curve.ts';

/** Halvings per unit of cost: the median of ordinary schemes comes to 50. */
export const kappa = 1.4;

/** Contrast. Cost per feature, by v: how many just-visible steps two colours are apart. */
export const contrastFactor = 2.5;
export const lossByVisibility: Curve = [
  [0.3, 0],
  [0.7, 1],
  [1, 1],
  [2, 0.15],
  [3, 0],
];
/** The same where the builder says the part must read: looking alike is no way out. */
export const lossWhereItMustRead: Curve = [
  [0, 1.5],
  [1, 1],
  [2, 0.15],
  [3, 0],
];
/** The same in a scheme declared tonal: low contrast is meant. */
export const lossInTonalScheme: Curve = [
  [0.4, 0],
  [0.8, 0.5],
  [1.25, 0],
];
/** Below this two different finishes look like one, which is a choice wasted but no flaw. */
export const sameToTheEye = 0.3;
/** Visual angles the published thresholds are used for, degrees. */
export const smallestJudgedDegrees = 0.05;
export const largestJudgedDegrees = 6;
/** An area this many times its width squared is a strip, not a patch. */
export const stripElongation = 8;
/** A neighbour with less of a part's border than this does not decide whether it reads. */
export const leastBorderShare = 0.05;
/** C* under which a colour counts as neutral, and how much less a neutral pair matters. */
export const neutralChroma = 6;
export const quietNeutrals = 0.4;
export const quietClothOnHard = 0.15;
/** Sheen steps that set two hard surfaces apart whatever their colours, and the v they are worth. */
export const sheenTellsApart = 1.5;
export const sheenVisibilityCeiling = 3;
/** Gloss from which bare metal or foil reads beside paint by what it mirrors, and the v it gets. */
export const mirrorsFromGu = 70;
export const mirrorVisibility = 3;
/** mm² at scale in the best look from which a part counts in full. */
export const fullImportanceMm2 = 100;

/** Accent. Families: complete linkage up to this distance. */
export const familyReach = 8;
export const familyLightnessFactor = 1.5;
export const metalApart = 6;
export const blackLightness = 28;
export const blackChroma = 8;
export const loudChroma = 25;
export const quietChroma = 10;
export const paleLightness = 75;
/** Share of a zone's painted area from which a colour is that zone's, not an accent. */
export const zoneColourShare = 0.25;
/** Percent of the car over which a family stops being an accent. */
export const accentShareFades = [3, 6] as const;
export const detailMm2 = 10;
export const zoneOccupiedMm2 = 3;
export const seenTogetherMm2 = 4;
/** Share of looks in which two echoes should be seen together. */
export const togetherEnough = 0.3;
export const orphanCost = 2.5;
export const unreadAccentCost = 3;
export const noAccentCost = 1;
export const noAccentBodyEchoed = 0.5;
export const noAccentTonal = 0.3;
/** Percent of cabin or wheels that body colour must take to count as carried in. */
export const bodyEchoShare = [0.3, 25] as const;
export const secondAccentCost = 0.4;
export const furtherAccentCost = 1.5;
export const oneColourCost = 2;
/** One colour: more features than this, and at most so many of them in another family. */
export const oneColourFrom = 3;
export const oneColourExceptions = 2;

/** Sheen. Gloss units at 60° to sheen steps that look about equally far apart. */
export const sheenSteps: Curve = [
  [3, 1],
  [8, 2],
  [18, 3],
  [28, 4],
  [50, 5],
  [78, 6],
  [92, 6.2],
  [100, 6.3],
];
export const sheenFactor = 2.5;
/** Cost by steps apart: nearly equal reads as a mistake, equal or clearly apart as meant. */
export const nearMiss: Curve = [
  [0.4, 0],
  [0.8, 1],
  [1.3, 1],
  [2, 0],
];
export const sheenBorderShare = 0.1;
export const sheenWithinSkin = 1;
export const sheenWithinFamily = 0.5;
export const sheenElsewhere = 0.06;
export const glossClearGu = 70;
export const flakeUnclearedOnMain = 1;
export const flakeUnclearedElsewhere = 0.3;
/** A material where nobody would put it, such as flock on bodywork; times how much the part counts. */
export const outOfPlace = 2;
/** Percent of the car from which foil over one part is said to ask for a very steady hand. */
export const muchFoilShare = 10;

/** Kept apart: cost by CIEDE2000 between two paints of one group. */
export const nearlySameFactor = 1.5;
export const nearlySameSkin = 1;
export const nearlySameElsewhere = 0.5;
export const nearlySameChromatic: Curve = [
  [1.5, 0],
  [3, 1],
  [8, 1],
  [20, 0],
];
export const nearlySameNeutral: Curve = [
  [1.5, 0],
  [3, 1],
  [6, 1],
  [12, 0],
];
export const comparedChroma = 15;
export const comparedLightness = 70;

/** Steadiness: only features thinner than this depend on one channel of contrast. */
export const steadinessFactor = 2.5;
export const steadinessBelowMm = 3;
/** Two colours that read by day and drift together under another light earn nothing by it. */
export const leastVisibilityElsewhere = 0.7;

/** Readiness. */
export const bottleCost = 0.4;
export const stripCost = 0.6;
export const lateCostPerDay = 0.05;
export const latestCost = 2;

/** Draws for closeness, and under how many of 100 it is too close to call. */
export const drawCount = 200;
export const tooCloseBelow = 90;
/** Points of the overall from which being too close to call wants a reason. */
export const plainlyApart = 10;
/** CIEDE2000 from which a part in one combination plainly differs from the same part in another. */
export const plainlyDifferent = 5;
export const glossSpread = 0.15;
export const glossSpreadShiny = 0.05;
export const shinyGu = 60;

/** Ordinary schemes drawn for comparison, and how they are put together. */
export const ordinaryCount = 400;
export const neutralChance = 0.6;
export const followChance = 0.65;
