/**
 * The picture that goes with a question: the asked alternatives under their letters, no names, no
 * scores, all seen alike. Drawing is fetched only once it is asked for.
 */
import { letterOf } from '../../build/build.ts';
import type { Shape } from '../picture/compose.ts';
import type { Work } from '../store.ts';
import type { Wanted } from './wanted.ts';

/** Draws the asked alternatives; the first four where there are more. */
export async function neutralPicture(
  work: Work,
  { alternatives }: Wanted,
  shape: Shape,
): Promise<HTMLCanvasElement> {
  const { comparisonPicture } = await import('../picture/compose.ts');
  const asked = work.build.alternatives
    .map((alternative, at) => ({ alternative, letter: letterOf(at) }))
    .filter(({ alternative }) => alternatives.includes(alternative.id));
  const build = { ...work.build, alternatives: asked.map(({ alternative }) => alternative) };
  const letters = asked.map(({ letter }) => letter);
  return comparisonPicture({ ...work, build }, shape, { letters });
}
