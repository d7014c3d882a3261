/**
 * Where could a finding be mended? For each finding the sets of parts that might wear something
 * else, and which finishes would answer it. Our judgement of what a builder would try.
 *
 * In: a finding and the scheme it was found in. Out: sites; what each would bring is for the search
 * to find out. Praise and remarks have none.
 */
import type { Evidence } from '../evidence.ts';
import { type Scheme, surfaceAt } from '../finding/scheme.ts';
import type { Worn } from '../seen/worn.ts';
import type { Way } from './remedy.ts';

/** Parts that would change together, and which finishes are worth trying there. */
export interface Site {
  readonly parts: readonly string[];
  readonly way: Way;
  readonly suits: (worn: Worn, family: number) => boolean;
}

const anything = (): boolean => true;
const swapOn = (parts: readonly string[]): Site => ({ parts, way: 'swap', suits: anything });

/** Every site of a finding. */
export function sitesFor(evidence: Evidence, scheme: Scheme): Site[] {
  const { score, kind, parts } = evidence;
  switch (`${score}/${kind}`) {
    case 'contrast/lost':
    case 'contrast/weak':
    case 'contrast/fair':
    case 'contrast/wasted':
    case 'contrast/must-read':
    case 'steadiness/fades-under-light':
    case 'steadiness/fades-for-eyes':
    case 'steadiness/weak-anywhere':
    case 'steadiness/fair-anywhere':
    case 'sheen/near-miss':
    case 'sheen/flake-without-clear':
    case 'sheen/out-of-place':
    case 'harmony/nearly-same':
    case 'readiness/to-strip':
    case 'readiness/late':
      return parts.map((part) => swapOn([part]));
    case 'readiness/to-buy':
    case 'accent/faint-accent':
    case 'accent/too-large':
    case 'accent/rather-large':
      return [swapOn(parts), ...parts.map((part) => swapOn([part]))];
    case 'accent/orphan':
    case 'accent/apart':
      return [...repeats(scheme, parts), swapOn(parts)];
    case 'accent/no-accent':
    case 'accent/body-carried-in':
      return freshAccents(scheme);
    case 'accent/two-accents':
    case 'accent/competing':
      return byFamily(scheme, parts).map(swapOn);
    case 'accent/one-colour':
      return chosenParts(scheme).map((part) => swapOn([part]));
    default:
      return [];
  }
}

/** Parts the builder chooses, without the one that is most of the skin. */
function chosenParts({ terms }: Scheme): string[] {
  const { surfaces, main } = terms.scene;
  return surfaces.flatMap(({ id, given }, at) => (given === undefined && at !== main ? [id] : []));
}

const familyAt = ({ terms, choice }: Scheme, at: number): number =>
  terms.familyOf[at]![choice[at]!]!;
const positionOf = ({ terms }: Scheme, part: string): number => terms.scene.positions.get(part)!;

/** The accent's colour on any one part that does not wear it yet. */
function repeats(scheme: Scheme, parts: readonly string[]): Site[] {
  const accent = familyAt(scheme, positionOf(scheme, parts[0]!));
  return chosenParts(scheme)
    .filter((part) => !parts.includes(part))
    .map((part) => ({
      parts: [part],
      way: 'repeat',
      suits: (_: Worn, family: number) => family === accent,
    }));
}

/** A loud colour on any two features, so that it is repeated from the start. */
function freshAccents(scheme: Scheme): Site[] {
  const { families } = scheme.terms;
  const body = familyAt(scheme, scheme.terms.scene.main);
  const features = chosenParts(scheme).filter(
    (part) => surfaceAt(scheme, positionOf(scheme, part)).role === 'feature',
  );
  return features.flatMap((one, k) =>
    features.slice(k + 1).map(
      (other): Site => ({
        parts: [one, other],
        way: 'accent',
        suits: (_, family) => family !== body && families[family]?.isLoud === true,
      }),
    ),
  );
}

/** Parts gathered by the family they wear. */
function byFamily(scheme: Scheme, parts: readonly string[]): string[][] {
  const groups = new Map<number, string[]>();
  for (const part of parts) {
    const family = familyAt(scheme, positionOf(scheme, part));
    groups.set(family, [...(groups.get(family) ?? []), part]);
  }
  return [...groups.values()];
}
