/** What would mend a finding, beneath it; fetched once the page stands. */

import { later } from '../../later.tsx';
import { useViewing } from '../../live/viewing.ts';
import type { RemediesProps } from './Remedies.tsx';

const Remedies = later(
  'What would mend this',
  async () => (await import('./Remedies.tsx')).Remedies,
);

/** Nothing until the cars are up and a remedy is found. */
export function Mending(props: RemediesProps) {
  const isUp = useViewing(({ liveness }) => liveness !== 'drawn' && liveness !== 'coming');
  if (!isUp || props.at < 0) return null;
  return <Remedies {...props} />;
}
