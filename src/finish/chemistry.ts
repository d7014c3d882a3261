/**
 * What may go over what, and what must be said about each sort of paint before it is opened?
 *
 * Common practice of modellers in general words; each verdict with its confidence (A firm, B usual,
 * C thin) and its note. A verdict is a habit, never a promise: test on scrap first. Cautions after
 * public guidance on isocyanates, solvents and dust; they say the usual things and defer to the
 * product's label and data sheet, to local rules and to licensed practice.
 */
import type { Chemistry } from './finish.ts';

export type Verdict = 'usual' | 'with care' | 'avoid';

export interface Layering {
  readonly verdict: Verdict;
  readonly note: string;
  readonly confidence: 'A' | 'B' | 'C';
}

type Paint = Exclude<Chemistry, 'none'>;
const says = (verdict: Verdict, note: string, confidence: Layering['confidence']): Layering => ({
  verdict,
  note,
  confidence,
});

/** Over (outer key) what lies under (inner key). */
const layers: Readonly<Record<Paint, Readonly<Record<Paint, Layering>>>> = {
  lacquer: {
    lacquer: says('usual', 'Light coats: it softens its own kind.', 'A'),
    acrylic: says('with care', 'Cracks have been seen: test, and start with mist coats.', 'B'),
    enamel: says('avoid', 'Its solvent lifts and wrinkles enamel.', 'A'),
    urethane: says('with care', 'Only over a cured and scuffed film.', 'C'),
  },
  acrylic: {
    lacquer: says('usual', 'Once the lacquer is dry.', 'A'),
    acrylic: says('usual', 'Once the first is dry to the touch.', 'A'),
    enamel: says('usual', 'Once the enamel has cured through.', 'A'),
    urethane: says('with care', 'Only over a cured and scuffed film.', 'C'),
  },
  enamel: {
    lacquer: says('usual', 'Once the lacquer is dry.', 'A'),
    acrylic: says('usual', 'Once the acrylic has cured through.', 'A'),
    enamel: says('with care', 'Mind the recoat window of the first enamel.', 'B'),
    urethane: says('usual', 'Washes over cured two-part clear wipe off cleanly.', 'B'),
  },
  urethane: {
    lacquer: says('usual', 'Once the lacquer has gassed out and no longer smells.', 'A'),
    acrylic: says('with care', 'Test first.', 'C'),
    enamel: says('with care', 'Test first, and let the enamel cure for weeks.', 'C'),
    urethane: says('with care', 'Scuff the cured film; it may still wrinkle.', 'B'),
  },
};

/** Whether `top` may go over `under`; a surface that is not paint takes what its maker allows. */
export function layeringOf(top: Chemistry, under: Chemistry): Layering {
  if (top === 'none' || under === 'none') {
    return says('with care', 'Not paint over paint: follow what the maker of both says.', 'C');
  }
  return layers[top][under];
}

const deferral =
  'General hobby practice, not advice: the product’s label and safety data sheet and your local ' +
  'rules come first; test on scrap; when unsure, ask a professional.';
const solvent =
  'Solvent vapour and spray mist: extraction to the outdoors, organic-vapour and particle mask, ' +
  'nitrile gloves, no sparks or flames; keep people and animals, birds above all, away until aired.';
const sanding = 'Sand wet, wear a particle mask for dust, wipe and do not blow.';

const cautions: Readonly<Record<Chemistry, readonly string[]>> = {
  lacquer: [solvent, sanding, deferral],
  acrylic: [
    'Water-based is not harmless: its mist reaches the lungs. Particle mask and extraction.',
    sanding,
    deferral,
  ],
  enamel: [solvent, sanding, deferral],
  urethane: [
    'Two-part urethane holds isocyanates: breathing the mist or skin contact can cause lasting ' +
      'asthma, and once sensitised, traces set it off. A cartridge mask is not accepted for spraying; ' +
      'air-fed breathing apparatus, eye and skin cover are. The mist cannot be seen and lingers: ' +
      'keep everyone else out and stay covered until the air has cleared. Leave it to a licensed ' +
      'painter, or choose a one-part clear.',
    sanding,
    deferral,
  ],
  none: [deferral],
};

/** What must be said before paint of this class is opened. */
export const cautionsOf = (chemistry: Chemistry): readonly string[] => cautions[chemistry];
