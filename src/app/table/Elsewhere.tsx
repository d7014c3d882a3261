/** Where else does this colour appear? One answer per alternative; pointing at it lights them all. */

import type { Elsewhere as Answered } from '../../score/where.ts';
import { useStaged } from '../onStage.ts';
import { pin, pointsAt, useIsPinned } from '../pointing.ts';
import { useElsewhere } from '../sheet/compared.ts';

/** Opens a new rule with the part in it; the form is fetched with the rules. */
const begin = (part: string): void =>
  void import('../rules/ruling.ts').then(({ startRule }) => startRule({ part }));

/** The answers for one part, as a row beneath it. */
export function Elsewhere({ part }: { part: string }) {
  const staged = useStaged();
  const answers = useElsewhere(part);
  return (
    <tr className="elsewhere">
      <th scope="row">
        Where else does this colour appear?
        <button type="button" className="text-button elsewhere-rule" onClick={() => begin(part)}>
          Rule with this part…
        </button>
      </th>
      {staged.map(({ alternative: { id }, at }) => {
        const answer = answers[at];
        return (
          <td key={id}>
            {answer === undefined ? 'The car does not show this part.' : <Answer {...answer} />}
          </td>
        );
      })}
    </tr>
  );
}

/** One answer, which lights its parts like any finding. */
function Answer({ parts, sentence }: Answered) {
  const isPinned = useIsPinned(parts);
  return (
    <button
      type="button"
      className="finding"
      aria-pressed={isPinned}
      onClick={() => pin(parts)}
      {...pointsAt(parts)}
    >
      {sentence}
    </button>
  );
}
