/**
 * The colour told beside one that is known: which spoon, and how this one differs from it. Both lie
 * edge to edge, as they would be held.
 */
import { useState } from 'react';
import { type EmbeddedFinish, refOf } from '../../../build/build.ts';
import { chromaOf } from '../../../colour/lab.ts';
import {
  besideColour,
  type Difference,
  type Direction,
  differenceFrom,
  directions,
  stepColour,
  stepSizes,
} from '../../../finish/edit/beside.ts';
import { labOf } from '../../../finish/edit/colour.ts';
import { later } from '../../later.tsx';
import { Choice } from '../../pieces/Choice.tsx';
import { lookOf } from '../../pieces/look.ts';
import { Bowl } from '../../pieces/Spoon.tsx';
import { useWork } from '../../store.ts';
import { embeddedOf, type Live } from '../live.ts';

const FinishPicker = later(
  'The spoons',
  async () => (await import('../../rack/FinishPicker.tsx')).FinishPicker,
  { meanwhile: 'The spoons are on their way.' },
);

/** The reference, the two side by side, and the steps. */
export function Beside({ live, rack }: { live: Live; rack: string }) {
  const { light } = useWork().build.viewing;
  const [reference, setReference] = useState<EmbeddedFinish>();
  const [isPicking, setPicking] = useState(true);
  const take = (finish: EmbeddedFinish): void => {
    setReference(finish);
    live.takeAlone((now) => besideColour(now, finish));
  };
  return (
    <>
      {isPicking ? (
        <>
          <p className="quiet">
            Pick a spoon that is near: this finish takes its colour, and then you say how it
            differs.
          </p>
          <FinishPicker
            label="Beside which spoon?"
            light={light}
            {...(reference && { chosen: refOf(reference) })}
            onPick={take}
          />
        </>
      ) : null}
      {reference === undefined ? null : (
        <>
          <Pair live={live} rack={rack} reference={reference} />
          <Steps live={live} />
          <div className="buttons">
            <button type="button" className="button" onClick={() => take(reference)}>
              Start again from {reference.name}
            </button>
            <button type="button" className="button" onClick={() => setPicking(!isPicking)}>
              {isPicking ? 'Fold the spoons away' : 'Beside another spoon'}
            </button>
          </div>
        </>
      )}
    </>
  );
}

interface PairProps {
  readonly live: Live;
  readonly rack: string;
  readonly reference: EmbeddedFinish;
}

function Pair({ live: { finish }, rack, reference }: PairProps) {
  const { light } = useWork().build.viewing;
  const own = embeddedOf(rack, finish);
  return (
    <figure className="pair">
      <div className="pair-spoons" aria-hidden="true">
        <Bowl finish={reference} light={light} />
        <span className="pair-split">
          <span style={{ background: lookOf(reference, light).hex }} />
          <span style={{ background: lookOf(finish, light).hex }} />
        </span>
        <Bowl finish={own} light={light} />
      </div>
      <figcaption>
        <span>{reference.name}</span>
        <strong role="status">{sentenceOf(differenceFrom(finish, reference))}</strong>
        <span>{finish.name}</span>
      </figcaption>
    </figure>
  );
}

const least = 0.05;

function sentenceOf({ deltaE, words }: Difference): string {
  if (deltaE < least) return 'The same colour by daylight';
  const how = words.length === 0 ? '' : `: this one is ${listOf(words.slice(0, 3))}`;
  return `ΔE ${deltaE.toFixed(1)} apart by daylight${how}`;
}

const listOf = (words: readonly string[]): string =>
  words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;

const greyChroma = 0.5;

function Steps({ live: { finish, take } }: { live: Live }) {
  const [size, setSize] = useState(1);
  const isGrey = chromaOf(labOf(finish.colour)) < greyChroma;
  const isIdle = (direction: Direction): boolean => direction.endsWith('vivid') && isGrey;
  return (
    <>
      <Choice
        legend="Each press moves it by"
        value={size}
        options={stepSizes.map(({ deltaE, name }) => ({
          value: deltaE,
          name,
          note: `ΔE ${deltaE}`,
        }))}
        onChoose={setSize}
      />
      <fieldset className="steps">
        <legend className="unseen">How it differs</legend>
        {directions.map((direction) => (
          <button
            key={direction}
            type="button"
            className="button"
            disabled={isIdle(direction)}
            onClick={() => take((now) => stepColour(now, direction, size))}
          >
            {direction.charAt(0).toUpperCase() + direction.slice(1)}
          </button>
        ))}
      </fieldset>
    </>
  );
}
