/** How was the colour obtained, how far may the real paint be from it, and what else is to be noted? */
import { perhapsNumberTyped } from '../../../finish/edit/typed.ts';
import type { Finish, Provenance } from '../../../finish/finish.ts';
import { uncertaintyOf, usualDeltaE } from '../../../finish/provenance.ts';
import { Choice } from '../../pieces/Choice.tsx';
import { Field } from '../../pieces/Field.tsx';
import type { Live } from '../live.ts';
import { meaningOf } from '../words.ts';

const ways: readonly { value: Provenance['how']; name: string }[] = [
  { value: 'measured', name: 'Measured' },
  { value: 'swatch', name: 'Beside a swatch' },
  { value: 'photo', name: 'Photograph' },
  { value: 'guess', name: 'Guess' },
];

/** Provenance, uncertainty and notes. */
export function Origin({ live: { finish, take } }: { live: Live }) {
  const { provenance } = finish;
  const say = (key: 'deltaE' | 'note', value: number | string | undefined): string | undefined =>
    take((now) => {
      const { [key]: _before, ...rest } = now.provenance;
      const provenance = (value === undefined ? rest : { ...rest, [key]: value }) as Provenance;
      return { ...now, provenance };
    });
  return (
    <section className="editor-section">
      <h3>How the colour was obtained</h3>
      <Choice
        legend="By"
        value={provenance.how}
        options={ways}
        onChoose={(how) => take((now) => ({ ...now, provenance: { ...now.provenance, how } }))}
      />
      <div className="fields">
        <Field
          label="Your own ΔE, where you know better"
          kind="number"
          value={String(provenance.deltaE ?? '')}
          hint={`Empty: the usual ${usualDeltaE[provenance.how]} for this way.`}
          onType={(text) => {
            const { value, fault } = perhapsNumberTyped(text, { low: 0, high: 30 });
            return fault ?? say('deltaE', value);
          }}
        />
        <p className="origin-meaning" role="status">
          {meaningOf(uncertaintyOf(provenance))}
        </p>
      </div>
      <Field
        label="Where it comes from"
        lines={2}
        value={provenance.note ?? ''}
        onType={(text) => say('note', text === '' ? undefined : text)}
      />
      <Field
        label="Notes on the finish"
        lines={2}
        value={finish.note ?? ''}
        onType={(text) =>
          take((now): Finish => {
            const { note: _before, ...rest } = now;
            return text === '' ? rest : { ...rest, note: text };
          })
        }
      />
    </section>
  );
}
