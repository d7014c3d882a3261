/** Whether a build is still on its way to a comparison, and then the three questions that lead there. */
import { useState } from 'react';
import { useAfterwards } from '../afterwards.ts';
import { useWork } from '../store.ts';
import { useAnswered } from './putAway.ts';
import { Questions } from './Questions.tsx';
import { stepsOf } from './steps.ts';

/** The questions; nothing where they were answered before the build was opened, or put away. */
export function Beginning() {
  const { key, build } = useAfterwards(useWork());
  const isAway = useAnswered(({ away }) => away.includes(key));
  const isUnderWay = stepsOf(build).some(({ answer }) => answer === undefined);
  // Once shown they stay until they are put away, so that nothing jumps at the last answer.
  const [shown, setShown] = useState<string>();
  if (isUnderWay && shown !== key) setShown(key);
  if (isAway || (!isUnderWay && shown !== key)) return null;
  return <Questions />;
}
