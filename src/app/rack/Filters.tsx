/**
 * What is asked of a finish: words or a colour, effect, sheen, chemistry, stock. Only what the rack
 * holds can be chosen, each with how many there are.
 */
import { memo, useId, useMemo, useState } from 'react';
import type { EmbeddedFinish } from '../../build/build.ts';
import { chemistries, effects } from '../../finish/finish.ts';
import { indexOf, kindsIn, type Stock } from '../../finish/rack/find.ts';
import { sheenClasses } from '../../finish/sheen.ts';
import { seek, useSeeking } from './seeking.ts';
import { numberInWords } from './told.ts';

const stocks: readonly (readonly [Stock, string])[] = [
  ['on hand', 'On hand'],
  ['to buy', 'To buy'],
  ['unrecorded', 'No bottle recorded'],
];

/** The search box and the choices beside it, which stay as they are while words are typed. */
export const Filters = memo(function Filters(props: { finishes: readonly EmbeddedFinish[] }) {
  const { finishes } = props;
  const effect = useSeeking((seeking) => seeking.effect);
  const sheen = useSeeking((seeking) => seeking.sheen);
  const chemistry = useSeeking((seeking) => seeking.chemistry);
  const stock = useSeeking((seeking) => seeking.stock);
  const [isUnfolded, setUnfolded] = useState(false);
  const isFiltering = [effect, sheen, chemistry, stock].some((one) => one !== undefined);
  const kinds = useMemo(() => kindsIn(indexOf(finishes)), [finishes]);
  return (
    <search className={isUnfolded || isFiltering ? 'filters is-unfolded' : 'filters'}>
      <Words />
      <button
        type="button"
        className="button filter-more"
        aria-expanded={isUnfolded || isFiltering}
        onClick={() => setUnfolded(!isUnfolded)}
      >
        By kind
      </button>
      <Filter
        label="Effect"
        any="Any effect"
        value={effect}
        choices={effects.map((one) => [one, worded(one), kinds.effects.get(one)])}
        onChoose={(chosen) => seek({ effect: chosen })}
      />
      <Filter
        label="Sheen"
        any="Any sheen"
        value={sheen}
        choices={sheenClasses.map(({ id, name }) => [id, worded(name), kinds.sheens.get(id)])}
        onChoose={(chosen) => seek({ sheen: chosen })}
      />
      <Filter
        label="Chemistry"
        any="Any chemistry"
        value={chemistry}
        choices={chemistries.map((one) => [
          one,
          one === 'none' ? 'Not paint' : worded(one),
          kinds.chemistries.get(one),
        ])}
        onChoose={(chosen) => seek({ chemistry: chosen })}
      />
      <Filter
        label="Stock"
        any="On hand or not"
        value={stock}
        choices={stocks.map(([one, name]) => [one, name, kinds.stocks.get(one)])}
        onChoose={(chosen) => seek({ stock: chosen })}
      />
    </search>
  );
});

function Words() {
  const id = useId();
  const text = useSeeking((seeking) => seeking.text);
  return (
    <div className="filter filter-words">
      <label htmlFor={id}>
        Find <span className="quiet">by words, or near a colour like #b87333</span>
      </label>
      <input
        id={id}
        type="search"
        className="entry"
        autoComplete="off"
        spellCheck={false}
        value={text}
        onChange={({ currentTarget }) => seek({ text: currentTarget.value })}
      />
    </div>
  );
}

/** `bare-metal` as `Bare metal`. */
const worded = (word: string): string =>
  `${word.slice(0, 1).toUpperCase()}${word.slice(1).replace('bare-', 'bare ')}`;

interface FilterProps<Value extends string> {
  readonly label: string;
  /** Words for asking nothing. */
  readonly any: string;
  readonly value: Value | undefined;
  readonly choices: readonly (readonly [value: Value, name: string, count: number | undefined])[];
  readonly onChoose: (value: Value | undefined) => void;
}

/** One choice among what there is; what is chosen stays to be seen where nothing has it. */
function Filter<Value extends string>(props: FilterProps<Value>) {
  const { label, any, value, choices, onChoose } = props;
  const id = useId();
  return (
    <div className="filter filter-kind">
      <label htmlFor={id}>{label}</label>
      <select
        id={id}
        className="entry"
        value={value ?? ''}
        onChange={({ currentTarget }) =>
          onChoose(choices.find(([one]) => one === currentTarget.value)?.[0])
        }
      >
        <option value="">{any}</option>
        {choices.map(([one, name, count]) =>
          count === undefined && one !== value ? null : (
            <option key={one} value={one}>
              {name} ({numberInWords(count ?? 0)})
            </option>
          ),
        )}
      </select>
    </div>
  );
}
