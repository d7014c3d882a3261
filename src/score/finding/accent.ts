/** Why the accent score is what it is: which colours are accents, where, and what would echo. */
import { zones } from '../../car/table.ts';
import type { Evidence } from '../evidence.ts';
import {
  accentShareFades,
  furtherAccentCost,
  noAccentBodyEchoed,
  noAccentCost,
  oneColourCost,
  secondAccentCost,
  togetherEnough,
} from '../judgement.ts';
import { familyNamed } from '../seen/family.ts';
import {
  type Accent,
  type AccentBalance,
  membershipOf,
  type Showing,
  showingOf,
} from '../six/accent.ts';
import { figure } from './figure.ts';
import { evidenceAbout, inWords, namesOf, quantity, type Scheme, surfaceAt } from './scheme.ts';

/** An accent that reads less than this, 0–1, is said to stand out in part only. */
const readsWell = 0.95;

/** Zones as they stand in a sentence. */
const zoneNames: Readonly<Record<string, string>> = {
  nose: 'nose',
  bonnet: 'bonnet',
  flank: 'flanks',
  wheels: 'wheels',
  cabin: 'cabin',
  deck: 'rear deck',
  tail: 'tail',
};

/** Names of zones in words: `nose and cabin`. */
export const zonesInWords = (positions: readonly number[]): string =>
  inWords(positions.map((z) => zoneNames[zones[z]!]!));

/** Zones with a preposition: `in the cabin`, `on the nose and tail`. */
export const placeInWords = (positions: readonly number[]): string =>
  positions.length === 0
    ? 'in one place'
    : `${zones[positions[0]!] === 'cabin' ? 'in' : 'on'} the ${zonesInWords(positions)}`;

/** Evidence for accent balance. */
export function accentEvidence(scheme: Scheme): Evidence[] {
  const balance = scheme.terms.balance(scheme.choice);
  const share = 1 / Math.max(1, balance.count);
  return [
    ...balance.accents.map((accent) => accentFinding(scheme, accent, share)),
    ...absence(scheme, balance),
    ...crowding(scheme, balance),
    ...sizeRemarks(scheme, balance),
  ];
}

function accentFinding(scheme: Scheme, accent: Accent, share: number): Evidence {
  const cost = accent.membership * accent.cost * share;
  const isOrphan = accent.zones.length < 2;
  const kind = isOrphan
    ? 'orphan'
    : accent.together < togetherEnough
      ? 'apart'
      : accent.reads < readsWell
        ? 'faint-accent'
        : 'echoed';
  const echo = kind === 'orphan' || kind === 'apart' ? bestEchoes(scheme, accent) : undefined;
  return evidenceAbout(
    scheme,
    'accent',
    kind,
    accent.surfaces,
    cost,
    {
      share: quantity(accent.sharePercent, '% of the car'),
      together: quantity(100 * accent.together, 'of 100 views'),
      reads: quantity(100 * accent.reads, 'of 100'),
    },
    {
      ...called(scheme, accent),
      zones: zonesInWords(accent.zones),
      where: placeInWords(accent.zones),
      parts: namesOf(scheme, accent.surfaces),
      ...(echo === undefined ? {} : { echoes: echo.names }),
    },
  );
}

/** The colour as it is called, and its everyday word. */
const called = (scheme: Scheme, { family, surfaces }: Showing) => {
  const own = scheme.terms.families[family]!;
  const worn = surfaces.map((at) => scheme.worn[at]!);
  return { family: familyNamed(own, worn), colour: own.word };
};

/** The one or two features that, wearing this colour, would show it in another zone most often. */
function bestEchoes(scheme: Scheme, accent: Accent) {
  const { scene, painted } = scheme.terms;
  const tries = scene.surfaces.flatMap((surface, at) => {
    if (surface.role !== 'feature' || surface.given !== undefined) return [];
    if (at === scene.main || accent.surfaces.includes(at)) return [];
    const shown = showingOf(scene, accent.family, [...accent.surfaces, at], painted);
    const isSmall = membershipOf(shown.sharePercent) === 1 && shown.ownZones.length === 0;
    return isSmall && shown.zones.length > 1 && shown.together > accent.together + 0.1
      ? [{ at, together: shown.together }]
      : [];
  });
  tries.sort((one, other) => other.together - one.together || one.at - other.at);
  const best = tries.slice(0, 2);
  if (best.length === 0) return undefined;
  const names = inWords(
    best.map(({ at, together }) => {
      const inViews = `${figure(100 * together)} of 100 views`;
      return `${surfaceAt(scheme, at).name} (${inViews})`;
    }),
    'or',
  );
  return { names };
}

function absence(scheme: Scheme, balance: AccentBalance): Evidence[] {
  if (balance.count >= 1) return [];
  const cost = (1 - balance.count) * balance.noneCost;
  const kind =
    balance.noneCost < noAccentBodyEchoed
      ? 'tonal'
      : balance.bodyEchoPercent > 0
        ? 'body-carried-in'
        : 'no-accent';
  const large = kind === 'no-accent' ? largeFor(scheme, balance) : undefined;
  if (large !== undefined) {
    const fades = membershipOf(large.sharePercent) > 0;
    return [
      evidenceAbout(
        scheme,
        'accent',
        fades ? 'rather-large' : 'too-large',
        large.surfaces,
        cost,
        {
          share: quantity(large.sharePercent, '% of the car'),
          most: quantity(accentShareFades[1], '% of the car'),
        },
        { ...called(scheme, large), parts: namesOf(scheme, large.surfaces) },
      ),
    ];
  }
  const main = scheme.terms.scene.main;
  return [
    evidenceAbout(scheme, 'accent', kind, [main], cost, {
      echo: quantity(balance.bodyEchoPercent, '% of the zone'),
    }),
  ];
}

/** A colour that would be the accent if it covered less: the one nearest to being small enough. */
function largeFor({ terms, choice }: Scheme, { showings }: AccentBalance): Showing | undefined {
  const body = terms.familyOf[terms.scene.main]![choice[terms.scene.main]!]!;
  return showings
    .filter(({ family, hasFeature, ownZones, sharePercent }) => {
      const isLoudElsewhere = family !== body && terms.families[family]!.isLoud;
      return isLoudElsewhere && hasFeature && ownZones.length === 0 && isLarge(sharePercent);
    })
    .sort((one, other) => one.sharePercent - other.sharePercent)[0];
}

const isLarge = (sharePercent: number): boolean => membershipOf(sharePercent) < 1;

function crowding(scheme: Scheme, balance: AccentBalance): Evidence[] {
  const found: Evidence[] = [];
  const second = secondAccentCost * Math.min(1, Math.max(0, balance.count - 1));
  const further = furtherAccentCost * Math.max(0, balance.count - 2);
  if (second + further > 0) {
    const surfaces = balance.accents.flatMap((accent) => accent.surfaces);
    found.push(
      evidenceAbout(
        scheme,
        'accent',
        further > 0 ? 'competing' : 'two-accents',
        surfaces,
        second + further,
        { count: quantity(balance.accents.length, 'accents') },
        { families: inWords(balance.accents.map((accent) => called(scheme, accent).family)) },
      ),
    );
  }
  if (balance.isOneColour) {
    const main = scheme.terms.scene.main;
    const family = scheme.terms.familyOf[main]![scheme.choice[main]!]!;
    const showing = balance.showings.find((one) => one.family === family)!;
    const words = called(scheme, showing);
    found.push(evidenceAbout(scheme, 'accent', 'one-colour', [main], oneColourCost, {}, words));
  }
  return found;
}

/** Remarks without cost: colours that are a zone's own, too much to be an accent, or a detail. */
function sizeRemarks(scheme: Scheme, balance: AccentBalance): Evidence[] {
  const { scene, families, familyOf } = scheme.terms;
  const body = familyOf[scene.main]![scheme.choice[scene.main]!]!;
  const isMissing = balance.count < 1 && balance.noneCost === noAccentCost;
  const told = isMissing ? largeFor(scheme, balance) : undefined;
  return balance.showings.flatMap((showing) => {
    const isCounted = balance.accents.some(({ family }) => family === showing.family);
    if (showing.family === body || isCounted || !families[showing.family]!.isLoud) return [];
    if (showing.family === told?.family) return [];
    const kind =
      showing.ownZones.length > 0
        ? 'zone-colour'
        : isLarge(showing.sharePercent)
          ? 'second-colour'
          : 'detail';
    return [
      evidenceAbout(
        scheme,
        'accent',
        kind,
        showing.surfaces,
        0,
        { share: quantity(showing.sharePercent, '% of the car') },
        {
          ...called(scheme, showing),
          zones: zonesInWords(showing.ownZones.length > 0 ? showing.ownZones : showing.zones),
          parts: namesOf(scheme, showing.surfaces),
        },
      ),
    ];
  });
}
