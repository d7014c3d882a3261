/**
 * How does a viewer's copy of a round look, to go on from as a build of one's own? The alternatives
 * that were asked about, in their order, named by what they wear instead of by letters.
 *
 * In: a round. Out: a build that any bench or file can hold. Limits: it has what viewers see and no
 * more: no stock, notes or rules.
 */
import type { Build } from '../build/build.ts';
import { madeName } from '../build/edit/naming.ts';
import { idFrom } from '../ground/id.ts';
import type { Round } from './round.ts';

/** A build of one's own from a round. */
export function buildOf({ build: asked }: Round): Build {
  let build: Build = { ...asked, id: idFrom(asked.name, 'build') };
  for (const [at, alternative] of asked.alternatives.entries()) {
    const named = { ...alternative, name: madeName(build, alternative) };
    build = { ...build, alternatives: build.alternatives.with(at, named) };
  }
  return build;
}
