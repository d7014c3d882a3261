/**
 * The painted body: the left half of the shell, made fine enough to mirror straight lines, scored
 * along every outline and painted into parts. Out: facets of body, stripes, engine cover, lamps,
 * gaps and the recessed trim. Metres, car coordinates.
 * Gap width 6 mm full size: a quarter of a millimetre at 1:24, what a sharp scriber leaves
 * (common practice, no source).
 */
import type { Vector3 } from '../../src/ground/vector.ts';
import type { Outline, Shell } from '../mesh/shell.ts';
import type { Facet } from '../mesh/solid.ts';
import { thin } from '../mesh/thin.ts';
import { halfShell } from './grid.ts';
import * as outline from './outlines.ts';
import { lenses, recesses } from './recesses.ts';
import { underneath } from './underneath.ts';

const halfGap = 0.003;
const lampGap = 0.005;

// Outlines whose edge is a dark gap running round a panel that stays part of the body.
const panels: readonly Outline[] = [outline.bonnet, outline.door, outline.engineCover];
// Longest edge, metres, that may cross each curve; the tighter it bends the shorter.
const curves: readonly [Outline, longest: number][] = [
  [outline.headlamp, 0.034],
  [outline.tailLamp, 0.034],
  [outline.frontIndicator, 0.02],
  [outline.sideVent, 0.026],
  [outline.doorCorners, 0.03],
  [outline.panelCorners, 0.03],
  [outline.plateRecess, 0.045],
  [outline.grille, 0.034],
  [outline.diffuser, 0.05],
  [outline.bonnet, 0.036],
  [outline.engineCover, 0.05],
  [outline.door, 0.06],
  [outline.arch, 0.07],
  [outline.cabin, 0.08],
];
const finest = 0.014;
/** Longest edge within a domed lens. */
const lensFine = 0.032;
/** How far a mirrored line may bend within an edge, radians, and an edge stray, metres. */
const bendMost = 0.045;
const strayMost = 0.0025;

/** Halves edges until outlines run smoothly and reflections bend evenly. */
function refined(): Shell {
  const shell = halfShell();
  for (let pass = 0; pass < 4; pass++) {
    shell.refine((a, b) => {
      const length = shell.lengthOf(a, b);
      const centre = shell.middle(a, b);
      if (length > lensFine && outline.tailLamp(centre) < 0) return true;
      return curves.some(
        ([curve, longest]) => length > longest && Math.abs(curve(centre)) < 0.6 * length,
      );
    });
  }
  for (let pass = 0; pass < 5; pass++) {
    shell.refine((a, b) => {
      if (shell.lengthOf(a, b) < finest || isHidden(shell.middle(a, b))) return false;
      const { angle, sagitta } = shell.strayOf(a, b);
      return angle > bendMost || sagitta > strayMost;
    });
  }
  return shell;
}

// Where an opening will be, or below the body: nothing there needs to be fine.
const isHidden = (point: Vector3): boolean =>
  [outline.cabin, outline.arch, outline.below].some((open, k) =>
    k === 2 ? open(point) > 0.03 : open(point) < -0.05,
  );

function scored(): Shell {
  const shell = refined();
  const out: Outline = (point) => point[0];
  shell.score(outline.arch);
  shell.score(outline.below);
  for (const edge of [outline.stripes.inner, outline.stripes.outer]) {
    shell.score((point) => out(point) - edge);
  }
  for (const opening of [
    outline.cabin,
    outline.headlamp,
    outline.tailLamp,
    outline.frontIndicator,
    outline.grille,
    outline.sideVent,
    outline.plateRecess,
    outline.diffuser,
    outline.splitterLine,
    outline.sillLine,
  ]) {
    shell.score(opening);
  }
  for (const rimmed of [outline.headlamp, outline.tailLamp]) {
    shell.score((point) => rimmed(point) - 1.6 * lampGap);
  }
  shell.score((point) => outline.frontIndicator(point) - lampGap);
  shell.score((point) => Math.max(outline.tailIndicator(point), outline.tailLamp(point)));
  for (const panel of panels) {
    shell.score((point) => panel(point) - halfGap);
    shell.score((point) => panel(point) + halfGap);
  }
  return shell;
}

/** The part a skin triangle belongs to; parts starting with `hole` are left open. */
function partAt(centre: Vector3): string {
  const is = (shape: Outline, by = 0): boolean => shape(centre) < by;
  if (outline.below(centre) > 0) return 'hole-below';
  if (is(outline.arch)) return 'hole-arch';
  if (is(outline.cabin)) return 'hole-cabin';
  if (is(outline.headlamp)) return 'hole-lamp';
  if (is(outline.headlamp, 1.6 * lampGap)) return 'badge-rims';
  if (is(outline.grille)) return 'hole-grille';
  if (is(outline.sideVent)) return 'hole-vent';
  if (is(outline.plateRecess)) return 'hole-plate';
  if (is(outline.diffuser)) return 'hole-diffuser';
  if (is(outline.tailLamp)) return is(outline.tailIndicator) ? 'hole-signal' : 'hole-tail';
  if (is(outline.tailLamp, 1.6 * lampGap)) return 'badge-rims';
  if (is(outline.frontIndicator)) return 'hole-indicator';
  if (is(outline.frontIndicator, lampGap)) return 'panel-gaps';
  if (panels.some((panel) => Math.abs(panel(centre)) < halfGap)) return 'panel-gaps';
  if (is(outline.splitterLine)) return 'splitter';
  if (is(outline.sillLine)) return 'sills';
  if (centre[0] > outline.stripes.inner && centre[0] < outline.stripes.outer) return 'stripe-left';
  return is(outline.engineCover) ? 'engine-cover' : 'body';
}

const isHole = (part: string): boolean => part.startsWith('hole');
// Lenses need their inner vertices for the dome; the great openings are thrown away anyway.
const isKept = (part: string): boolean =>
  /^hole-(tail|signal|indicator|cabin|arch|below)$/.test(part);
const isSkin = (part: string): boolean => !isHole(part);

/** Every facet of the left half of the skin and its recesses; the right half is its mirror image. */
export function bodyFacets(): Facet[] {
  const shell = scored();
  shell.paint(partAt);
  thin(shell, {
    bend: bendMost,
    bendFlat: 0.0032,
    bendShare: 0.18,
    stray: strayMost,
    line: 0.0005,
    longest: 0.3,
    isKept,
  });
  return [
    ...shell.facets(isSkin),
    ...lenses(shell),
    ...recesses(shell).facets(),
    ...underneath().facets(),
  ];
}
