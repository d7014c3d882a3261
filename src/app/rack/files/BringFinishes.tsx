/**
 * Finishes from elsewhere onto a rack: files chosen or dropped, a table pasted. What would come in is
 * seen as spoons, what stays out is told row by row, and nothing happens before it is asked for.
 */
import { useMemo, useState } from 'react';
import type { SameId } from '../../../finish/rack/merge.ts';
import { freeName } from '../../../ground/id.ts';
import { goTo } from '../../area.ts';
import { Choice } from '../../pieces/Choice.tsx';
import { Dialog } from '../../pieces/Dialog.tsx';
import { Field } from '../../pieces/Field.tsx';
import { nameFault } from '../../pieces/naming.ts';
import { sayDone } from '../../pieces/said.ts';
import { useRacks, useWork } from '../../store.ts';
import { seek } from '../seeking.ts';
import { countOf } from '../told.ts';
import { bringIn, outcomeOf, putAway, useBringing, type Whereto } from './bring.ts';
import { Read } from './Read.tsx';
import { Source } from './Source.tsx';
import { outcomeInWords } from './told.ts';
import './files.css';
import '../../pieces/form.css';

const aNewRack = '+';

/** The dialog; `into` is the rack it was opened from. */
export function BringFinishes({ into }: { readonly into?: string }) {
  const racks = useRacks() ?? [];
  const { build } = useWork();
  const { light } = build.viewing;
  const readings = useBringing((bringing) => bringing.readings);
  const incoming = useMemo(
    () => readings.flatMap(({ rack }) => (rack === undefined ? [] : [rack])),
    [readings],
  );
  const [chosen, choose] = useState(racks.some(({ id }) => id === into) ? into : aNewRack);
  const [named, setNamed] = useState<string>();
  const [sameId, setSameId] = useState<SameId>('replace');
  const isNew = chosen === aNewRack || !racks.some(({ id }) => id === chosen);
  const usual = freeName(
    // What was pasted has no name of its own.
    readings.some(({ source }) => source === incoming[0]?.name)
      ? 'My shelf'
      : (incoming[0]?.name ?? 'My shelf'),
    racks.map(({ name }) => name),
  );
  const name = named ?? usual;
  const to = useMemo(
    (): Whereto =>
      isNew ? { kind: 'new', name: name.trim() } : { kind: 'into', rack: chosen ?? '', sameId },
    [isNew, name, chosen, sameId],
  );
  const outcome = useMemo(
    () => outcomeOf(racks, incoming, to, build),
    [racks, incoming, to, build],
  );
  const count = incoming.reduce((sum, { finishes }) => sum + finishes.length, 0);
  const fault = isNew ? nameFault(name) : undefined;
  const { merged } = outcome;
  const hasNamesakes =
    merged !== undefined && merged.replaced + merged.keptBoth + merged.skipped > 0;
  const doesNothing =
    merged !== undefined && merged.added + merged.replaced + merged.keptBoth === 0;

  const bring = (): void => {
    const [first, ...others] = outcome.touched;
    bringIn(outcome);
    putAway();
    if (first === undefined) return;
    goTo('rack');
    seek({ scope: others.length === 0 ? first.id : '*' });
    sayDone(
      merged === undefined
        ? `${countOf(count)} brought in on ${outcome.touched.map((rack) => rack.name).join(' and ')}.`
        : `${countOf(merged.added + merged.replaced + merged.keptBoth)} brought in on ${first.name}.`,
    );
  };

  return (
    <Dialog title="Add finishes" className="files" onClose={putAway} closing="Close">
      <Source isSmall={readings.length > 0} />
      {readings.map((reading) => (
        <Read key={reading.source} reading={reading} light={light} />
      ))}
      {count === 0 ? null : (
        <form
          className="files-to"
          onSubmit={(event) => {
            event.preventDefault();
            if (fault === undefined && !doesNothing) bring();
          }}
        >
          <div className="fields">
            <div className="field">
              <label htmlFor="bring-to">Put them on</label>
              <select
                id="bring-to"
                className="entry"
                value={isNew ? aNewRack : chosen}
                onChange={({ currentTarget }) => choose(currentTarget.value)}
              >
                <option value={aNewRack}>
                  {incoming.length === 1 ? 'A new rack' : 'A new rack for each'}
                </option>
                {racks.map(({ id, name: rackName, finishes }) => (
                  <option key={id} value={id}>
                    {rackName} ({finishes.length.toLocaleString('en-GB')})
                  </option>
                ))}
              </select>
            </div>
            {isNew ? (
              <Field
                label={
                  incoming.length === 1 ? 'Name of the new rack' : 'Name of the first new rack'
                }
                value={name}
                onType={(text) => {
                  setNamed(text);
                  return nameFault(text);
                }}
              />
            ) : null}
          </div>
          {hasNamesakes ? (
            <Choice<SameId>
              legend="Where one is there already"
              value={sameId}
              options={[
                { value: 'replace', name: 'Take the new one' },
                { value: 'keep-both', name: 'Keep both' },
                { value: 'skip', name: 'Keep the old one' },
              ]}
              onChoose={setSameId}
            />
          ) : null}
          <ul className="files-outcome" aria-live="polite">
            {outcomeInWords(outcome).map((sentence) => (
              <li key={sentence}>{sentence}</li>
            ))}
          </ul>
          <p className="buttons">
            <button
              type="submit"
              className="button button-strong"
              disabled={fault !== undefined || doesNothing}
            >
              Bring in{' '}
              {countOf(
                merged === undefined ? count : merged.added + merged.replaced + merged.keptBoth,
              )}
            </button>
          </p>
        </form>
      )}
    </Dialog>
  );
}
