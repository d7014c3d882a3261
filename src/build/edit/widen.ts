/**
 * What if open parts might wear anything there is? Every open part on the model gets each finish
 * that nothing has to be bought for as a candidate, behind its own; whether it suits the part is for
 * the scores to say. A build and finishes in, as the shelf tells their bottles; a build out that
 * `buildFrom` accepts, the same object where nothing is new.
 */
import { bottlesOf } from '../../finish/finish.ts';
import { type Build, type EmbeddedFinish, isOpen, type Part, refOf } from '../build.ts';
import { embed } from './finish.ts';
import { mostCandidates, undecidedRef } from './part.ts';

/** Lets open parts wear those of the finishes that are on hand. */
export function widened(build: Build, finishes: readonly EmbeddedFinish[]): Build {
  const onHand = finishes.filter(
    (finish) => refOf(finish) !== undecidedRef && bottlesOf(finish).every((one) => one.onHand),
  );
  const holding = onHand.reduce(embed, build);
  const held = new Set(holding.finishes.map(refOf));
  const refs = onHand.map(refOf).filter((ref) => held.has(ref));
  const parts = holding.parts.map((part): Part => {
    if (!isOpen(part) || part.absent) return part;
    const candidates = [...new Set([...part.candidates, ...refs])].slice(0, mostCandidates);
    return candidates.length === part.candidates.length ? part : { ...part, candidates };
  });
  return parts.every((part, at) => part === build.parts[at]) ? build : { ...holding, parts };
}
