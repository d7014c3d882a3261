/** A rule as a sentence, its parts and finishes as small chips in it. */
import { Fragment } from 'react';
import { type FinishRef, finishesByRef, type Rule } from '../../build/build.ts';
import { ruleWords } from '../../build/rule.ts';
import { Bowl } from '../pieces/Spoon.tsx';
import { useBench } from '../store.ts';

/** The sentence, with a full stop. */
export function Sentence({ rule }: { rule: Rule }) {
  // A word is told from the others by its place: the same part may be named twice.
  const words = ruleWords(rule).map((word, at) => ({ word, place: `word ${at}` }));
  return (
    <>
      {words.map(({ word, place }) => (
        <Fragment key={place}>
          {typeof word === 'string' ? (
            word
          ) : 'part' in word ? (
            <PartChip part={word.part} />
          ) : (
            <FinishChip finish={word.finish} />
          )}
        </Fragment>
      ))}
      .
    </>
  );
}

/** The name of a part. */
export function PartChip({ part }: { part: string }) {
  const name = useBench(
    ({ work }) => work?.build.parts.find(({ id }) => id === part)?.name ?? part,
  );
  return (
    <b className="chip-part" dir="auto">
      {name}
    </b>
  );
}

/** A finish: the bowl of its spoon and its name. */
export function FinishChip({ finish: ref }: { finish: FinishRef }) {
  const finish = useBench(({ work }) => work && finishesByRef(work.build).get(ref));
  const light = useBench(({ work }) => work?.build.viewing.light);
  if (finish === undefined || light === undefined) return <b>{ref}</b>;
  return (
    <span className="chip-finish">
      <Bowl finish={finish} light={light} />
      <bdi>{finish.name}</bdi>
    </span>
  );
}
