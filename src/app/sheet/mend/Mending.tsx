/** What would mend a finding, beneath it; fetched once the page stands. */
import { lazy, Suspense } from 'react';
import { useViewing } from '../../live/viewing.ts';

const Remedies = lazy(async () => ({ default: (await import('./Remedies.tsx')).Remedies }));

export interface MendingProps {
  readonly alternative: string;
  /** Place of the finding in the evidence of the alternative's sheet. */
  readonly at: number;
  /** Only the first remedy, where room is short. */
  readonly isBrief?: boolean;
}

/** Nothing until the cars are up and a remedy is found. */
export function Mending(props: MendingProps) {
  const isUp = useViewing(({ liveness }) => liveness !== 'drawn' && liveness !== 'coming');
  if (!isUp || props.at < 0) return null;
  return (
    <Suspense fallback={null}>
      <Remedies {...props} />
    </Suspense>
  );
}
