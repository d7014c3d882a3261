/**
 * What if open parts might wear anything there is? Every open part on the model gets finishes as
 * candidates, behind its own: all that are given, or those that nothing has to be bought for. Whether
 * one suits a part is for the scores to say. A build and finishes in, as the shelf tells their
 * bottles; a build out that `buildFrom` accepts, the same object where nothing is new.
 */
import { bottlesOf } from '../../finish/finish.ts';
import { type Build, type EmbeddedFinish, isOpen, type Part, refOf } from '../build.ts';
import { embed } from './finish.ts';
import { mostCandidates, undecidedRef } from './part.ts';

/** Lets open parts wear those of the finishes that are on hand. */
export const widened = (build: Build, finishes: readonly EmbeddedFinish[]): Build =>
  openedTo(
    build,
    finishes.filter((finish) => bottlesOf(finish).every((one) => one.onHand)),
  );

/** Lets open parts wear all of these finishes, whatever has to be bought. */
export function openedTo(build: Build, finishes: readonly EmbeddedFinish[]): Build {
  const given = finishes.filter((finish) => refOf(finish) !== undecidedRef);
  const holding = given.reduce(embed, build);
  const held = new Set(holding.finishes.map(refOf));
  const refs = given.map(refOf).filter((ref) => held.has(ref));
  const parts = holding.parts.map((part): Part => {
    if (!isOpen(part) || part.absent) return part;
    const candidates = [...new Set([...part.candidates, ...refs])].slice(0, mostCandidates);
    return candidates.length === part.candidates.length ? part : { ...part, candidates };
  });
  return parts.every((part, at) => part === build.parts[at]) ? build : { ...holding, parts };
}
