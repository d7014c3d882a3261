/**
 * How do other programs get the colours of a rack? As a design-token file: JSON in which each finish
 * is a colour token under its name. Out only; what makes a finish more than a colour stands in the
 * token's description and cannot be read back.
 *
 * Format and Color modules of the W3C Design Tokens Community Group, version 2025.10 (Final Community
 * Group Report of 28 October 2025; a report, not a W3C standard) [DTCG2025]. Colour: the finish as
 * dried, under D65, at 45° from the mirror direction for flake. Within sRGB a token holds it as
 * `srgb`; a colour no screen shows is held as `oklab` [Ottosson2020]. `hex` is the nearest sRGB.
 * Limits: what is brighter than white, such as fluorescent paint, is held as bright as white.
 */
import { xyzFromLab } from '../../colour/lab.ts';
import { oklabFromXyz } from '../../colour/oklab.ts';
import { hexFromLab, srgbFromLab } from '../../colour/srgb.ts';
import { type Appearance, appearanceOf } from '../appearance.ts';
import { type Finish, isFlake } from '../finish.ts';

interface ColourToken {
  readonly $type: 'color';
  readonly $value: {
    readonly colorSpace: 'srgb' | 'oklab';
    readonly components: readonly number[];
    readonly hex: string;
  };
  readonly $description: string;
}

/** The finishes as the text of a design-token file, one token each, in their order. */
export function tokensText(name: string, finishes: readonly Finish[]): string {
  const nameOf = tokenNames();
  const tokens = finishes.map((finish): [string, ColourToken] => [nameOf(finish), tokenOf(finish)]);
  const about = `${name}: paint and other finishes as dried, under daylight D65.`;
  return `${JSON.stringify({ $description: about, ...Object.fromEntries(tokens) }, null, 2)}\n`;
}

function tokenOf(finish: Finish): ColourToken {
  const look = appearanceOf(finish, 'D65');
  return { $type: 'color', $value: colourValueOf(look), $description: descriptionOf(finish, look) };
}

function colourValueOf({ lab, hex, isClipped }: Appearance): ColourToken['$value'] {
  if (!isClipped) {
    return { colorSpace: 'srgb', components: srgbFromLab(lab).channels.map(rounded), hex };
  }
  const { lightness, a, b } = oklabFromXyz(xyzFromLab(lab));
  // The format knows nothing brighter than white.
  const components = [Math.min(1, lightness), a, b].map(rounded);
  return { colorSpace: 'oklab', components, hex };
}

/** Far finer than half a step of 1/255. */
const rounded = (value: number): number => Math.round(value * 1e5) / 1e5;

/** What the finish is, in one line: `metallic, gloss (78 GU at 60°); colour by swatch, ΔE about 4`. */
function descriptionOf(finish: Finish, { sheen, gloss60, face, flop, deltaE }: Appearance): string {
  const turning = isFlake(finish)
    ? `; from ${hexFromLab(face).hex} facing the light to ${hexFromLab(flop).hex} away from it`
    : '';
  const { how } = finish.provenance;
  const by = how === 'measured' ? 'colour measured' : `colour by ${how}`;
  return (
    `${finish.effect.replace('-', ' ')}, ${sheen.name} (${Math.round(gloss60)} GU at 60°)${turning}; ` +
    `${by}, off by about ΔE ${deltaE}`
  );
}

/**
 * Names as the format allows them: no braces or full stops, no dollar sign in front; and, since other
 * programs may ignore case, none that differs from another by case alone.
 */
function tokenNames(): (finish: Finish) => string {
  const used = new Set<string>();
  return ({ name, id }) => {
    const plain = name
      .replace(/(\d)\.(?=\d)/g, '$1,')
      .replaceAll('{', '(')
      .replaceAll('}', ')')
      .replaceAll('.', '')
      .replace(/^[\s$]+/, '')
      .trim();
    // An id is unique in its rack and holds none of these characters.
    const base = plain === '' ? id : plain;
    let free = base;
    for (let count = 2; used.has(free.toLowerCase()); count++) free = `${base} ${count}`;
    used.add(free.toLowerCase());
    return free;
  };
}
