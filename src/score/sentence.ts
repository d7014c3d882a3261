/**
 * Every finding in words. The one place where evidence becomes language, so terminal, page and
 * files say the same. Sentences avoid verbs that would have to agree with a part's name, since
 * parts are named by the builder.
 */
import { opinionRange } from '../colour/harmony.ts';
import type { Closeness, Unsure } from './comparison.ts';
import type { Evidence } from './evidence.ts';
import { figure } from './finding/figure.ts';
import { drawCount, tooCloseBelow } from './judgement.ts';

type Writer = (number: (key: string) => number, word: (key: string) => string) => string;

/** Size and distance as a phrase. */
const seen = (n: (key: string) => number): string =>
  `${figure(n('size'), 1)} mm seen from ${figure(n('distance'))} mm`;

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
const plural = (count: number, one: string): string =>
  `${figure(count)} ${one}${Math.round(count) === 1 ? '' : 's'}`;

const writers: Readonly<Record<string, Writer>> = {
  'contrast/lost': (n, w) =>
    `Hard to tell ${w('part')} from ${w('neighbours')}: ${seen(n)}, ΔL* ${figure(n('deltaL'))} ` +
    `(ΔE2000 ${figure(n('deltaE'))}). Match them, or part them by about ΔL* ${figure(n('needed'))}.`,
  'contrast/weak': (n, w) =>
    `Only weakly apart: ${w('part')} and ${w('neighbours')}, ${seen(n)}, ΔL* ` +
    `${figure(n('deltaL'))}. About ΔL* ${figure(n('needed'))} would be likely to read.`,
  'contrast/fair': (n, w) =>
    `Likely to read, if not at a glance: ${w('part')} against ${w('neighbours')}, ${seen(n)}, ` +
    `${figure(n('visibility'), 1)} visible steps.`,
  'contrast/wasted': (n, w) =>
    `Nobody will tell ${w('part')} from ${w('neighbours')} (ΔE2000 ${figure(n('deltaE'), 1)}): ` +
    'one bottle would do for all.',
  'contrast/must-read': (_, w) =>
    `Meant to read, yet ${w('part')} and ${w('neighbours')} wear the same finish, ${w('finish')}.`,
  'contrast/too-small': (n, w) =>
    `Too small to judge at this distance: ${w('part')} against ${w('neighbours')}, ${seen(n)}.`,
  'contrast/reads': (_, w) => `Likely to read clearly: ${w('parts')}.`,

  'accent/orphan': (n, w) =>
    `${capital(w('family'))} shows ${w('where')} only (${w('parts')}, ` +
    `${figure(n('share'), 1)} % of the car)${echoes(w)}`,
  'accent/apart': (n, w) =>
    `${capital(w('family'))} shows twice (${w('parts')}) but is seldom seen together: in ` +
    `${figure(n('together'))} of 100 views${echoes(w)}`,
  'accent/faint-accent': (n, w) =>
    `${capital(w('family'))} ties in (${w('parts')}) but stands out only in part from what is ` +
    `beside it: ${figure(n('reads'))} of 100.`,
  'accent/echoed': (n, w) =>
    `${capital(w('family'))} ties in: ${w('parts')}, seen together in ` +
    `${figure(n('together'))} of 100 views.`,
  'accent/no-accent': () => 'No accent: nothing small stands out in a colour of its own.',
  'accent/too-large': (n, w) =>
    `${capital(w('family'))} is too large to be an accent: ${figure(n('share'), 1)} % of the car ` +
    `(${w('parts')}), where ${figure(n('most'))} % is the most. Nothing smaller stands out.`,
  'accent/rather-large': (n, w) =>
    `${capital(w('family'))} is rather large for an accent: ${figure(n('share'), 1)} % of the car; ` +
    `from ${figure(n('most'))} % on it is a second colour.`,
  'accent/body-carried-in': (n) =>
    `No accent, but the body colour is carried in (${figure(n('echo'))} % of the cabin or wheels).`,
  'accent/tonal': () => 'No accent, as meant in a tonal scheme.',
  'accent/two-accents': (_, w) => `Two accents share the eye: ${w('families')}.`,
  'accent/competing': (n, w) =>
    `Too many accents (${figure(n('count'))}): ${w('families')}. Two are usually plenty.`,
  'accent/one-colour': (_, w) => `Nearly everything is ${w('family')}: nothing answers the body.`,
  'accent/zone-colour': (n, w) =>
    `${capital(w('family'))} is the colour of the ${w('zones')} rather than an accent ` +
    `(${figure(n('share'), 1)} % of the car).`,
  'accent/second-colour': (n, w) =>
    `${capital(w('family'))} is too large for an accent: a second colour, ` +
    `${figure(n('share'), 1)} % of the car.`,
  'accent/detail': (_, w) => `A mere detail: ${w('family')} on ${w('parts')}.`,

  'sheen/near-miss': (n, w) =>
    `Nearly equal sheen reads as a mistake: ${w('part')} at ${figure(n('duller'))} GU beside ` +
    `${w('neighbour')} at ${figure(n('shinier'))} GU. Match them` +
    `${Number.isFinite(n('clearBelow')) ? `, or go to ${figure(n('clearBelow'))} GU or duller` : ''}.`,
  'sheen/deliberate': (n, w) =>
    `Clearly apart in sheen, as if meant: ${w('part')} at ${figure(n('duller'))} GU, ` +
    `${w('neighbour')} at ${figure(n('shinier'))} GU.`,
  'sheen/flake-without-clear': (n, w) =>
    `${capital(w('effect'))} without gloss clear: ${w('part')} at ${figure(n('gloss'))} GU; ` +
    `${w('finish')} usually wants ${figure(n('usual'))} GU or more to show its depth.`,
  'sheen/out-of-place': (_, w) =>
    `${capital(w('effect'))} does not go there: ${w('finish')} on ${w('part')}. ` +
    'Paint of such a colour would.',
  'sheen/much-foil': (n, w) =>
    `Foil over much of the car: ${w('finish')} on ${w('part')}, ${figure(n('share'))} %. ` +
    'Some do it well; every crease and speck will show.',

  'harmony/nearly-same': (n, w) =>
    `Nearly the same colour: ${w('part')} and ${w('neighbour')}, ΔE2000 ` +
    `${figure(n('deltaE'), 1)}. Match them, or part them by about ${figure(n('plainlyTwo'))}.`,
  'harmony/relation': (n, w) =>
    `Beside ${w('part')}, ${w('neighbour')}: hue ${figure(n('hueApart'))}° apart, ` +
    `${comparison(n)}. ${opinion(n('opinion'))}`,
  'harmony/relation-neutral': (n, w) =>
    `Beside ${w('part')}, ${w('neighbour')}: ${comparison(n)}. ${opinion(n('opinion'))}`,

  'steadiness/fades-under-light': (n, w) =>
    `Less clear under ${w('light')}: ${w('part')} against ${w('neighbours')}, ` +
    `${figure(n('daylight'), 1)} visible steps by day, ${figure(n('worst'), 1)} there.`,
  'steadiness/fades-for-eyes': (n, w) =>
    `Less clear to ${w('eyes')} eyes: ${w('part')} against ${w('neighbours')}, ` +
    `${figure(n('daylight'), 1)} visible steps for most, ${figure(n('worst'), 1)} for them. ` +
    `ΔL* is ${figure(n('deltaL'))}; more of it would hold.`,
  'steadiness/weak-anywhere': (n, w) =>
    `Weak by any light: ${w('part')} against ${w('neighbours')}, ` +
    `${figure(n('daylight'), 1)} visible steps by day.`,
  'steadiness/fair-anywhere': (n, w) =>
    `Likely to read by any light, if not at a glance: ${w('part')} against ${w('neighbours')}, ` +
    `${figure(n('daylight'), 1)} visible steps by day.`,
  'steadiness/steady': (_, w) =>
    `Holds under lamp and LED and for colour-weak eyes: ${w('parts')}.`,

  'readiness/to-buy': (_, w) => `To buy: ${w('bottle')}, for ${w('parts')}.`,
  'readiness/to-strip': (_, w) =>
    `Painted already: ${w('part')} would have to be stripped and sprayed again.`,
  'readiness/late': (n, w) =>
    `At the earliest all has cured in ${plural(n('days'), 'day')}, ` +
    `${plural(n('late'), 'day')} past the date wanted; the longest wait is for ${w('part')}.`,
  'readiness/in-time': (n, w) =>
    `At the earliest all has cured in ${plural(n('days'), 'day')}, within the date wanted; ` +
    `the longest wait is for ${w('part')}.`,
  'readiness/days-needed': (n, w) =>
    `At the earliest all has cured in ${plural(n('days'), 'day')}; the longest wait is for ${w('part')}.`,
  'readiness/all-on-hand': () => 'Everything is on hand.',
};

function echoes(w: (key: string) => string): string {
  const names = w('echoes');
  return names === '' ? '.' : `. It would be seen together with ${names} in the same colour.`;
}

function comparison(n: (key: string) => number): string {
  const lightness = n('deltaL');
  const chroma = n('deltaC');
  const light =
    Math.abs(lightness) < 3
      ? 'equally light'
      : `${lightness > 0 ? 'lighter' : 'darker'} by ΔL* ${figure(Math.abs(lightness))}`;
  const quiet =
    Math.abs(chroma) < 5 ? 'equally colourful' : chroma > 0 ? 'more colourful' : 'less colourful';
  return `${light}, ${quiet}`;
}

const opinion = (ch: number): string =>
  `A 2006 experiment’s formula gives the pair ${figure(ch, 2)} on its scale of about ` +
  `${figure(opinionRange[0], 1)} to +${figure(opinionRange[1], 1)}: one opinion, not scored.`;

/** The finding in one sentence or two. */
export function sentenceOf(evidence: Evidence): string {
  const writer = writers[`${evidence.score}/${evidence.kind}`];
  if (writer === undefined) throw new Error(`no words for ${evidence.score}/${evidence.kind}`);
  return writer(
    (key) => evidence.numbers[key]?.value ?? Number.NaN,
    (key) => evidence.words[key] ?? '',
  );
}

const obtained: Readonly<Record<Unsure['how'], string>> = {
  measured: 'was measured',
  photo: 'is from a photograph',
  swatch: 'was matched to a swatch',
  guess: 'is a guess',
};

/** How surely one alternative is ahead of another: what was tried, how often it held, and why not. */
export function closenessSentence(
  { a, b, aheadIn100, isAlike, unsure }: Closeness,
  letterOf: (id: string) => string,
): string {
  const [first, second] = [letterOf(a), letterOf(b)];
  if (isAlike) return `${first} and ${second} are alike so far.`;
  // Never 100 where it was not always so.
  const times = (of100: number): string =>
    `${figure(of100 < 100 ? Math.min(99, of100) : 100)} times of 100`;
  if (aheadIn100 >= tooCloseBelow) {
    return `${first} stays ahead of ${second} ${times(aheadIn100)}.`;
  }
  const close =
    `${first} and ${second} are too close to call; ask your viewers. ` +
    `${first} is ahead ${times(aheadIn100)}.`;
  if (unsure === undefined) return close;
  return (
    `${close} ${unsure.name}’s colour ${obtained[unsure.how]}, within about ` +
    `ΔE ${figure(unsure.deltaE)}; were it certain, ${first} would be ahead ${times(unsure.aheadIn100)}.`
  );
}

/** What is tried before saying so. */
export const closenessExplained =
  `Each pair is tried ${drawCount} times, every colour shifted at random within what is known of ` +
  `it. From ${tooCloseBelow} times of 100 on, one counts as ahead.`;
