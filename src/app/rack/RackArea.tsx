/**
 * The rack beneath the cars: every finish the builder has, as spoons in rows, found by words,
 * nearness, kind and stock; the one in the hand beside them with what can be done with it.
 */
import { type ReactNode, useMemo } from 'react';
import { type EmbeddedFinish, refOf } from '../../build/build.ts';
import { useRacks, useWork } from '../store.ts';
import { Carried } from '../table/Carried.tsx';
import { Filters } from './Filters.tsx';
import { everywhere, finishesIn, inBuild } from './finishes.ts';
import { type Found, useFound } from './found.ts';
import { InHand } from './hand/InHand.tsx';
import './rack.css';
import { MakeFinish } from './MakeFinish.tsx';
import { RackHead } from './RackHead.tsx';
import { SpoonRows } from './SpoonRows.tsx';
import { isAsking, seek, seekAll, toTheSpoons, useSeeking } from './seeking.ts';
import { countOf, numberInWords } from './told.ts';
import { paintOfColour, questionOf, typedFrom } from './typed.ts';

/** The whole area. */
export function RackArea() {
  const { build } = useWork();
  const racks = useRacks();
  const seeking = useSeeking();
  const { light } = build.viewing;
  const isThere =
    seeking.scope === everywhere ||
    seeking.scope === inBuild ||
    (racks ?? []).some(({ id }) => id === seeking.scope);
  const scope = isThere ? seeking.scope : everywhere;
  const finishes = useMemo(
    () => finishesIn(scope, racks ?? [], build.finishes),
    [scope, racks, build.finishes],
  );
  const { wanted, near } = useAsked(finishes);
  const found = useFound(finishes, wanted, near, light);
  const inHand = useMemo(
    () =>
      finishes.find((finish) => refOf(finish) === seeking.inHand) ??
      finishesIn(everywhere, racks ?? [], build.finishes).find(
        (finish) => refOf(finish) === seeking.inHand,
      ),
    [finishes, racks, build.finishes, seeking.inHand],
  );
  const take = (finish: EmbeddedFinish): void => seek({ inHand: refOf(finish) });
  const making = <MakeFinish typed={seeking.text} found={found} into={scope} onMade={take} />;
  const place = inHand === undefined ? -1 : found.finishes.indexOf(inHand);
  const deltaE = found.deltaE?.[place];
  return (
    <section className="rack-area" aria-labelledby="rack-title">
      <RackHead />
      <Filters finishes={finishes} />
      <div className="rack-count">
        <p role="status">{foundInWords(found, near?.name)}</p>
        {seeking.near === undefined ? null : (
          <button
            type="button"
            className="button"
            onClick={() => {
              seek({ near: undefined });
              toTheSpoons();
            }}
          >
            Not by nearness
          </button>
        )}
        {isAsking(seeking) ? (
          <button type="button" className="button" onClick={seekAll}>
            Show all again
          </button>
        ) : null}
        {seeking.text.trim() === '' || found.finishes.length === 0 ? null : making}
      </div>
      <div className="rack-body">
        {found.finishes.length === 0 ? (
          <Nothing
            isEmpty={finishes.length === 0}
            isWaiting={racks === undefined}
            scope={scope}
            making={making}
          />
        ) : (
          <SpoonRows
            label="Spoons"
            found={found}
            asked={`${scope} ${questionOf(wanted, near)}`}
            light={light}
            chosen={inHand && refOf(inHand)}
            onPick={take}
            onMove={take}
          />
        )}
        {inHand === undefined ? (
          <p className="in-hand quiet">
            Press a spoon to see what is known of it, to put it on a car or to edit it.
          </p>
        ) : (
          <InHand key={refOf(inHand)} finish={inHand} near={near?.name} deltaE={deltaE} />
        )}
      </div>
      <Carried />
    </section>
  );
}

/** What is asked, the same object while it stays the same. */
function useAsked(finishes: readonly EmbeddedFinish[]) {
  const { text, effect, sheen, chemistry, stock, near: beside } = useSeeking();
  const { words, srgb } = useMemo(() => typedFrom(text), [text]);
  const wanted = useMemo(
    () => ({
      words,
      ...(effect && { effect }),
      ...(sheen && { sheen }),
      ...(chemistry && { chemistry }),
      ...(stock && { stock }),
    }),
    [words, effect, sheen, chemistry, stock],
  );
  const near = useMemo(() => {
    if (srgb !== undefined) return paintOfColour(srgb);
    // As it is now, should it have been edited since.
    return beside && (finishes.find((one) => refOf(one) === refOf(beside)) ?? beside);
  }, [srgb, beside, finishes]);
  return { wanted, near };
}

function foundInWords({ finishes, among, waiting }: Found, near: string | undefined): string {
  const all =
    finishes.length === among
      ? countOf(among)
      : `${numberInWords(finishes.length)} of ${countOf(among)}`;
  if (near === undefined) return `${all}.`;
  const rest = waiting === 0 ? '' : `; ${numberInWords(waiting)} still to compare`;
  return `${all}, those nearest to ${near} first${rest}.`;
}

interface NothingProps {
  readonly isEmpty: boolean;
  readonly isWaiting: boolean;
  readonly scope: string;
  /** The way to what is missing. */
  readonly making: ReactNode;
}

/** Why there is nothing, and the way out. */
function Nothing({ isEmpty, isWaiting, scope, making }: NothingProps) {
  if (isWaiting) return <p className="rack-nothing">The racks are on their way.</p>;
  if (isEmpty) {
    return (
      <p className="rack-nothing">
        Nothing stands here yet. Add a new finish, paste rows from a spreadsheet, or open a file.
      </p>
    );
  }
  return (
    <div className="rack-nothing">
      <p>No finish here has all of that.</p>
      <div className="buttons">
        <button type="button" className="button" onClick={seekAll}>
          Show all again
        </button>
        {scope === everywhere ? null : (
          <button
            type="button"
            className="button"
            onClick={() => {
              seek({ scope: everywhere });
              toTheSpoons();
            }}
          >
            Look in all racks
          </button>
        )}
        {making}
      </div>
    </div>
  );
}
