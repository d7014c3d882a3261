/** Where else does this colour appear? One answer per alternative; pointing at it lights them all. */
import { useStaged } from '../onStage.ts';
import { pointsAt } from '../pointing.ts';
import { useElsewhere } from '../sheet/compared.ts';

/** The answers for one part, as a row beneath it. */
export function Elsewhere({ part }: { part: string }) {
  const staged = useStaged();
  const answers = useElsewhere(part);
  return (
    <tr className="elsewhere">
      <th scope="row">Where else does this colour appear?</th>
      {staged.map(({ alternative: { id }, at }) => {
        const answer = answers[at];
        return (
          <td key={id} {...pointsAt(answer?.parts ?? [])}>
            {answer?.sentence ?? 'The car does not show this part.'}
          </td>
        );
      })}
    </tr>
  );
}
