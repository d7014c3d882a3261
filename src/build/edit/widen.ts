/**
 * What if open parts might wear anything there is? Every open part on the model gets finishes as
 * candidates, behind its own: all of its kind that are given, or those that nothing has to be bought
 * for. Cloth is offered where a candidate is cloth already, anything else where one is not, all
 * where none is decided (common practice, no source); whether one suits a part besides is for the
 * scores to say. A build and finishes in, as the shelf tells their bottles; a build out that
 * `buildFrom` accepts, the same object where nothing is new.
 */
import { bottlesOf, isCloth } from '../../finish/finish.ts';
import { type Build, type EmbeddedFinish, isOpen, type Part, refOf } from '../build.ts';
import { embed } from './finish.ts';
import { mostCandidates, undecidedRef } from './part.ts';

/** Lets open parts wear those of the finishes that are on hand. */
export const widened = (build: Build, finishes: readonly EmbeddedFinish[]): Build =>
  openedTo(
    build,
    finishes.filter((finish) => bottlesOf(finish).every((one) => one.onHand)),
  );

/** Lets open parts wear all of these finishes that are of their kind, whatever has to be bought. */
export function openedTo(build: Build, finishes: readonly EmbeddedFinish[]): Build {
  const given = finishes.filter((finish) => refOf(finish) !== undecidedRef);
  const holding = given.reduce(embed, build);
  const cloth = new Map(holding.finishes.map((finish) => [refOf(finish), isCloth(finish)]));
  const refs = given.map(refOf).filter((ref) => cloth.has(ref));
  const parts = holding.parts.map((part): Part => {
    if (!isOpen(part) || part.absent) return part;
    const decided = part.candidates.filter((ref) => ref !== undecidedRef);
    const kinds = new Set(decided.map((ref) => cloth.get(ref)));
    const fitting = refs.filter((ref) => kinds.size === 0 || kinds.has(cloth.get(ref)));
    const candidates = [...new Set([...part.candidates, ...fitting])].slice(0, mostCandidates);
    return candidates.length === part.candidates.length ? part : { ...part, candidates };
  });
  return parts.every((part, at) => part === build.parts[at]) ? build : { ...holding, parts };
}
