/**
 * The six costs of one scheme, written the plain way: colour objects, a fresh list for every
 * step, a CIEDE2000 call for every pair, nothing remembered. Slow but obvious; it is the oracle
 * for `score/terms` and the yardstick of `npm run speed -- score`.
 */
import { differenceCiede2000, type Lab65 } from 'culori';
import { zones } from '../../src/car/table.ts';
import * as judged from '../../src/score/judgement.ts';
import { along } from '../../src/score/seen/curve.ts';
import type { Surface } from '../../src/score/seen/scene.ts';
import { thresholdsFor } from '../../src/score/seen/visibility.ts';
import type { Worn } from '../../src/score/seen/worn.ts';
import type { Terms } from '../../src/score/terms.ts';

interface Dressed {
  surface: Surface;
  at: number;
  worn: Worn;
  colour: Lab65;
  family: number;
  isChosen: boolean;
}

const colourOf = (lab: readonly number[]): Lab65 => ({
  mode: 'lab65',
  l: lab[0]!,
  a: lab[1]!,
  b: lab[2]!,
});
const deltaE = differenceCiede2000();
const sum = (values: number[]): number => values.reduce((all, value) => all + value, 0);

/** Costs in halvings: contrast, accent, sheen, nearly the same, steadiness, readiness. */
export function plainCosts(terms: Terms, choice: ArrayLike<number>): number[] {
  const dressed = terms.scene.surfaces.map((surface, at): Dressed => {
    const { worn } = terms.candidates[at]![choice[at]!]!;
    return {
      surface,
      at,
      worn,
      colour: colourOf(worn.lab),
      family: terms.families.findIndex((family) =>
        family.members.some((member) => member.ref === worn.ref),
      ),
      isChosen: surface.given === undefined,
    };
  });
  const neighbours = terms.scene.borders.map((border) => ({
    ...border,
    one: dressed[border.a]!,
    other: dressed[border.b]!,
  }));
  const readings = neighbours.flatMap(({ one, other, shareOfA, shareOfB }) => {
    const isFeature = (side: Dressed): boolean => side.surface.role === 'feature';
    if (!isFeature(one) && !isFeature(other)) return [];
    const oneIsCharged =
      isFeature(one) && (!isFeature(other) || one.surface.areaMm2 < other.surface.areaMm2);
    const share = oneIsCharged ? shareOfA : shareOfB;
    const [feature, neighbour] = oneIsCharged ? [one, other] : [other, one];
    return share < judged.leastBorderShare ? [] : [{ feature, neighbour, share }];
  });

  const visible = (feature: Dressed, one: Lab65, other: Lab65): number => {
    const { sizeDegrees, isStrip } = feature.surface;
    const need = thresholdsFor(sizeDegrees, isStrip);
    return Math.sqrt(
      ((one.l - other.l) / need.lightness) ** 2 +
        ((one.a - other.a) / need.a) ** 2 +
        ((one.b - other.b) / need.b) ** 2,
    );
  };
  const bySheen = (one: Worn, other: Worn): number => {
    const bright = [one, other].filter(
      (side) => side.isMetal && side.gloss60 >= judged.mirrorsFromGu,
    );
    if (bright.length === 1 && one.isMetal !== other.isMetal) return judged.mirrorVisibility;
    const steps = Math.abs(one.sheenStep - other.sheenStep);
    if (one.isCloth || other.isCloth || steps < judged.sheenTellsApart) return 0;
    return Math.min(judged.sheenVisibilityCeiling, steps);
  };
  const apart = (feature: Dressed, neighbour: Dressed): number =>
    Math.max(
      visible(feature, feature.colour, neighbour.colour),
      bySheen(feature.worn, neighbour.worn),
    );
  const quiet = (feature: Dressed, neighbour: Dressed): number => {
    const [one, other] = [feature.worn, neighbour.worn];
    if (one.chroma >= judged.neutralChroma || other.chroma >= judged.neutralChroma) return 1;
    const isSkin = feature.surface.group === 'skin' && neighbour.surface.group === 'skin';
    if (one.isMetalLike && other.isMetalLike && !isSkin) return 0;
    return one.isCloth !== other.isCloth ? judged.quietClothOnHard : judged.quietNeutrals;
  };
  const curveFor = (feature: Dressed) =>
    terms.mustRead.includes(feature.surface.id)
      ? judged.lossWhereItMustRead
      : terms.tonal
        ? judged.lossInTonalScheme
        : judged.lossByVisibility;
  const isTooSmall = (side: Dressed): boolean =>
    side.surface.sizeDegrees < judged.smallestJudgedDegrees;

  const contrast = sum(
    readings.map(({ feature, neighbour, share }) => {
      const isSame = feature.worn.ref === neighbour.worn.ref;
      // Asked of every pair, as a sheet that shows CIEDE2000 beside each reading would.
      const shown = deltaE(feature.colour, neighbour.colour);
      if (isTooSmall(feature) || Number.isNaN(shown)) return 0;
      const mustRead = terms.mustRead.includes(feature.surface.id);
      if (isSame && !mustRead) return 0;
      const loss = along(curveFor(feature), isSame ? 0 : apart(feature, neighbour));
      const counts = isSame ? 1 : quiet(feature, neighbour);
      return judged.contrastFactor * feature.surface.importance * share * counts * loss;
    }),
  );

  const steadiness = sum(
    readings.map(({ feature, neighbour, share }) => {
      const { thicknessMm, importance } = feature.surface;
      const isDelicate = thicknessMm !== undefined && thicknessMm < judged.steadinessBelowMm;
      if (!isDelicate || isTooSmall(feature)) return 0;
      if (feature.worn.ref === neighbour.worn.ref) return 0;
      const lossBetween = (one: readonly number[], other: readonly number[], floor: number) => {
        const v = Math.max(
          visible(feature, colourOf(one), colourOf(other)),
          bySheen(feature.worn, neighbour.worn),
        );
        return along(curveFor(feature), Math.max(floor, v));
      };
      const byDay = Math.max(
        visible(
          feature,
          colourOf(feature.worn.underLights[0]!),
          colourOf(neighbour.worn.underLights[0]!),
        ),
        bySheen(feature.worn, neighbour.worn),
      );
      const floor = Math.min(judged.leastVisibilityElsewhere, byDay);
      const lights = feature.worn.underLights.map((lab, k) =>
        lossBetween(lab, neighbour.worn.underLights[k]!, k === 0 ? 0 : floor),
      );
      const eyes = feature.worn.toEyes.map((lab, k) =>
        lossBetween(lab, neighbour.worn.toEyes[k]!, floor),
      );
      const both = Math.max(...lights) + Math.max(lights[0]!, sum(eyes) / eyes.length);
      const counts = importance * share * quiet(feature, neighbour);
      return judged.steadinessFactor * counts * 0.5 * both;
    }),
  );

  const sheen =
    sum(
      neighbours.map(({ one, other, shareOfA, shareOfB, touching }) => {
        if (!one.isChosen || !other.isChosen || one.worn.ref === other.worn.ref) return 0;
        const smaller = one.surface.areaMm2 < other.surface.areaMm2 ? shareOfA : shareOfB;
        const share = touching * smaller;
        if (share < judged.leastBorderShare || !one.worn.isPaint || !other.worn.isPaint) return 0;
        const isSkin = one.surface.group === 'skin' && other.surface.group === 'skin';
        if (!isSkin && one.worn.isFlake !== other.worn.isFlake) return 0;
        const concern = isSkin
          ? judged.sheenWithinSkin
          : one.family === other.family
            ? judged.sheenWithinFamily
            : judged.sheenElsewhere;
        const steps = Math.abs(one.worn.sheenStep - other.worn.sheenStep);
        const weight = Math.min(1, share / judged.sheenBorderShare);
        return judged.sheenFactor * weight * concern * along(judged.nearMiss, steps);
      }),
    ) +
    sum(
      dressed.map(({ surface, at, worn, isChosen }) => {
        const isUncleared = worn.isFlake && worn.gloss60 < judged.glossClearGu;
        if (!isChosen || surface.group !== 'skin' || !isUncleared) return 0;
        const isMain = at === terms.scene.main;
        return (
          judged.sheenFactor *
          (isMain ? judged.flakeUnclearedOnMain : judged.flakeUnclearedElsewhere)
        );
      }),
    ) +
    sum(
      dressed.map(({ surface, worn, isChosen }) => {
        const isCabin = surface.group === 'cabin';
        const goes =
          (!['ribbon', 'flock'].includes(worn.effect) || isCabin) &&
          (worn.effect !== 'leather' || isCabin || surface.group === 'trim') &&
          (worn.effect !== 'rubber' || surface.group !== 'skin') &&
          (worn.effect !== 'lens' || surface.group === 'trim');
        return isChosen && !goes ? judged.sheenFactor * judged.outOfPlace * surface.importance : 0;
      }),
    );

  const nearlySame = sum(
    dressed.flatMap((one, k) =>
      dressed.slice(k + 1).map((other) => {
        const { group } = one.surface;
        if (!one.isChosen || !other.isChosen) return 0;
        if (group === 'trim' || group !== other.surface.group) return 0;
        const difference = deltaE(one.colour, other.colour);
        const [a, b] = [one.worn, other.worn];
        if (a.ref === b.ref || !a.isPaint || !b.isPaint || a.isFlake !== b.isFlake) return 0;
        const coloured = a.chroma >= judged.comparedChroma && b.chroma >= judged.comparedChroma;
        const pale = a.lab[0] >= judged.comparedLightness && b.lab[0] >= judged.comparedLightness;
        if (!coloured && !pale) return 0;
        const neutral = a.chroma < judged.comparedChroma && b.chroma < judged.comparedChroma;
        const curve = neutral ? judged.nearlySameNeutral : judged.nearlySameChromatic;
        const weight = group === 'skin' ? judged.nearlySameSkin : judged.nearlySameElsewhere;
        return judged.nearlySameFactor * weight * along(curve, difference);
      }),
    ),
  );

  return [
    contrast,
    plainAccent(terms, dressed, (family) => {
      const own = readings.filter(
        ({ feature, neighbour }) => feature.family === family && neighbour.family !== family,
      );
      const weights = own.map(({ feature, share }) => feature.surface.importance * share);
      const read = own.map(
        ({ feature, neighbour }, k) =>
          weights[k]! * Math.min(1, Math.max(0, apart(feature, neighbour) - 1)),
      );
      return sum(weights) > 0 ? sum(read) / sum(weights) : 1;
    }),
    sheen,
    nearlySame,
    steadiness,
    plainReadiness(terms, choice),
  ];
}

function plainAccent(terms: Terms, dressed: Dressed[], readsOf: (family: number) => number) {
  const { scene, families, tonal } = terms;
  const looks = [...scene.lookWeights];
  const body = dressed[scene.main]!.family;
  const chosen = dressed.filter(({ isChosen }) => isChosen);
  const areaOf = (wearers: Dressed[], zone: number, look: number): number =>
    sum(wearers.map(({ surface }) => surface.zoneLookMm2[zone * looks.length + look]!));
  const meanOf = (wearers: Dressed[], zone: number): number =>
    sum(looks.map((weight, look) => weight * areaOf(wearers, zone, look)));
  const accents = families.flatMap((family, f) => {
    const wearers = chosen.filter((one) => one.family === f);
    const isWorn = wearers.some(({ surface }) => surface.role === 'feature');
    if (f === body || !isWorn || !(family.isLoud || family.isQuiet)) return [];
    const areas = looks.map((_, look) => zones.map((_zone, zone) => areaOf(wearers, zone, look)));
    const most = Math.max(...areas.map(sum));
    const occupied = zones.filter((_, zone) =>
      areas.some((perZone) => perZone[zone]! >= judged.zoneOccupiedMm2),
    );
    const isZones = zones.some((_, zone) => {
      const mean = meanOf(wearers, zone);
      return mean > 0 && mean >= judged.zoneColourShare * meanOf(chosen, zone);
    });
    if (isZones || most < judged.detailMm2) return [];
    if (!family.isLoud && occupied.length < 2) return [];
    const together = sum(
      areas.map((perZone, look) => {
        const second = [...perZone].sort((a, b) => b - a)[1]!;
        return looks[look]! * Math.min(1, second / judged.seenTogetherMm2);
      }),
    );
    const share = sum(wearers.map(({ surface }) => surface.sharePercent));
    const [from, to] = judged.accentShareFades;
    const membership = Math.min(1, Math.max(0, (to - share) / (to - from)));
    if (membership === 0) return [];
    const placed =
      occupied.length < 2
        ? judged.orphanCost * Math.min(1, Math.sqrt(most / judged.fullImportanceMm2))
        : 1 - Math.min(1, together / judged.togetherEnough);
    return [{ membership, cost: placed + judged.unreadAccentCost * (1 - readsOf(f)) }];
  });
  const count = sum(accents.map(({ membership }) => membership));
  const summed = sum(accents.map(({ membership, cost }) => membership * cost));
  const carriers = dressed.filter(
    ({ family, surface }) => family === body && surface.group !== 'skin',
  );
  const [least, most] = judged.bodyEchoShare;
  const isCarried =
    families[body]!.isLoud &&
    (['cabin', 'wheels'] as const).some((zone) => {
      const at = zones.indexOf(zone);
      const percent = (100 * meanOf(carriers, at)) / meanOf(chosen, at);
      return percent >= least && percent <= most;
    });
  const none = tonal
    ? judged.noAccentTonal
    : isCarried
      ? judged.noAccentBodyEchoed
      : judged.noAccentCost;
  const features = chosen.filter(({ surface }) => surface.role === 'feature');
  const others = features.filter(({ family }) => family !== body);
  const isOneColour = families[body]!.isLoud && features.length > 3 && others.length <= 2;
  return (
    (count >= 1 ? summed / count : summed + (1 - count) * none) +
    judged.secondAccentCost * Math.min(1, Math.max(0, count - 1)) +
    judged.furtherAccentCost * Math.max(0, count - 2) +
    (isOneColour ? judged.oneColourCost : 0)
  );
}

function plainReadiness(terms: Terms, choice: ArrayLike<number>): number {
  const preparations = terms.candidates.map((list, at) => list[choice[at]!]!.preparation);
  const bottles = new Set(preparations.flatMap(({ toBuy }) => [...toBuy]));
  const days = Math.max(...preparations.map((one) => one.days));
  const late = terms.daysWanted === undefined ? 0 : Math.max(0, days - terms.daysWanted);
  return (
    judged.bottleCost * bottles.size +
    judged.stripCost * preparations.filter(({ strips }) => strips).length +
    Math.min(judged.latestCost, judged.lateCostPerDay * late)
  );
}
