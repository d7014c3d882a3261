/** One finding as a sentence. Pointing at it lights its parts; pressing it keeps them lit. */
import { memo } from 'react';
import type { Evidence } from '../../score/evidence.ts';
import { sentenceOf } from '../../score/sentence.ts';
import { pin, pointsAt, useIsLit, useIsPinned } from '../pointing.ts';

/** Keeps a number and its unit on one line. */
const withUnits = (sentence: string): string =>
  sentence.replace(/(\d) (%|mm|GU|ml)(?![a-z])/g, '$1\u00a0$2');

/** A sentence that lights the parts it speaks of. */
export const Finding = memo(function Finding({ evidence }: { evidence: Evidence }) {
  const isLit = useIsLit(evidence.parts);
  const isPinned = useIsPinned(evidence.parts);
  const weight = evidence.cost > 0 ? 'finding' : 'finding finding-remark';
  const sentence = withUnits(sentenceOf(evidence));
  if (evidence.parts.length === 0) return <p className={weight}>{sentence}</p>;
  return (
    <button
      type="button"
      className={isLit ? `${weight} is-lit` : weight}
      aria-pressed={isPinned}
      onClick={() => pin(evidence.parts)}
      {...pointsAt(evidence.parts)}
    >
      {sentence}
    </button>
  );
});
