/** How shiny is it once dry? By reading, by word, or beside reference spoons of the same colour. */
import { useId, useMemo, useState } from 'react';
import {
  likelySampleGloss,
  nearestReference,
  referenceGlosses,
  type SampleForm,
  sampleFormOf,
  setGloss,
  setGlossClass,
  setSampleGloss,
} from '../../../finish/edit/gloss.ts';
import { numberTyped } from '../../../finish/edit/typed.ts';
import { sheenClasses, sheenClassOf } from '../../../finish/sheen.ts';
import { Choice } from '../../pieces/Choice.tsx';
import { Field } from '../../pieces/Field.tsx';
import { Bowl } from '../../pieces/Spoon.tsx';
import { useWork } from '../../store.ts';
import type { Live } from '../live.ts';

const units = { low: 0, high: 100, unit: 'GU' };
const classes = sheenClasses.map(({ id, name }) => ({ value: id, name }));

/** Gloss of the finish, and of the sample its colour was taken from. */
export function Gloss({ live, rack }: { live: Live; rack: string }) {
  const { finish, take } = live;
  const [isBeside, setBeside] = useState(false);
  return (
    <section className="editor-section">
      <h3>Gloss</h3>
      <Choice
        legend="In a word"
        value={sheenClassOf(finish.gloss60).id}
        options={classes}
        onChoose={(id) => take((now) => setGlossClass(now, id))}
      />
      <div className="fields">
        <Field
          label="Reading at 60°"
          kind="number"
          unit="GU"
          value={String(finish.gloss60)}
          hint="Of the dried outermost film, clear coat included."
          onType={(text) => {
            const { value, fault } = numberTyped(text, units);
            return value === undefined ? fault : take((now) => setGloss(now, value));
          }}
        />
        <div className="in-words">
          <button
            type="button"
            className="button"
            aria-expanded={isBeside}
            onClick={() => setBeside(!isBeside)}
          >
            {isBeside ? 'Put the reference spoons away' : 'Beside reference spoons'}
          </button>
        </div>
      </div>
      {isBeside ? <References live={live} rack={rack} /> : null}
      <Sample live={live} />
    </section>
  );
}

function References({ live: { finish, take }, rack }: { live: Live; rack: string }) {
  const { light } = useWork().build.viewing;
  const name = useId();
  const spoons = useMemo(
    () => referenceGlosses.map((gloss60) => ({ rack, ...setGloss(finish, gloss60) })),
    [finish, rack],
  );
  const nearest = nearestReference(finish.gloss60);
  return (
    <fieldset className="references">
      <legend>The same colour from dead matt to mirror: press the one that looks the same</legend>
      <div>
        {spoons.map((spoon) => (
          <label key={spoon.gloss60}>
            <input
              type="radio"
              name={name}
              checked={spoon.gloss60 === nearest}
              onChange={() => take((now) => setGloss(now, spoon.gloss60))}
            />
            <Bowl finish={spoon} light={light} />
            <span>
              {spoon.gloss60} GU <small>{sheenClassOf(spoon.gloss60).name}</small>
            </span>
          </label>
        ))}
      </div>
    </fieldset>
  );
}

const samples: readonly { value: SampleForm; name: string }[] = [
  { value: 'same', name: 'just as shiny' },
  { value: 'glossier', name: 'glossier' },
  { value: 'duller', name: 'duller' },
];

function Sample({ live: { finish, take, takeAlone } }: { live: Live }) {
  const form = sampleFormOf(finish);
  return (
    <>
      <Choice
        legend="The sample that the colour was taken from was"
        value={form}
        options={samples}
        onChoose={(to) => takeAlone((now) => setSampleGloss(now, likelySampleGloss(now, to)))}
      />
      {form === 'same' ? null : (
        <Field
          label="Its reading at 60°"
          kind="number"
          unit="GU"
          value={String(finish.sampleGloss60 ?? '')}
          hint="A dull surface strews white light over its colour; that is worked in here, so matt over gloss black comes out a dark grey."
          onType={(text) => {
            const { value, fault } = numberTyped(text, units);
            return value === undefined ? fault : take((now) => setSampleGloss(now, value));
          }}
        />
      )}
    </>
  );
}
