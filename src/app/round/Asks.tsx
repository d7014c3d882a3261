/** @jsxImportSource preact */
/**
 * Which car's wheels, which car's stripes? One question for each part the builder asks about, each
 * of which may be left alone. Cars that wear the same there share one answer.
 */
import { useId } from 'preact/hooks';
import type { Round } from '../../opinion/round.ts';
import { Bowl } from './drawn/Bowl.tsx';
import { type Wearing, type Worn, wearingsOf } from './worn.ts';

interface AsksProps {
  readonly round: Round;
  readonly letters: readonly string[];
  readonly worn: ReadonlyMap<string, readonly Worn[]>;
  readonly answers: Readonly<Record<string, string>>;
  /** Takes the letter for a part; undefined takes the answer back. */
  readonly onAnswer: (part: string, letter: string | undefined) => void;
}

/** The questions part by part. */
export function Asks({ round, letters, worn, answers, onAnswer }: AsksProps) {
  const { build, asks } = round;
  return (
    <section class="round-section" aria-labelledby="asks-title">
      <h2 id="asks-title">And part by part?</h2>
      <p class="quiet">Leave out what you do not mind.</p>
      {asks.map((part) => (
        <Ask
          key={part}
          name={build.parts.find(({ id }) => id === part)?.name ?? part}
          light={build.viewing.light}
          wearings={wearingsOf(part, letters, worn)}
          answer={answers[part]}
          onAnswer={(letter) => onAnswer(part, letter)}
        />
      ))}
    </section>
  );
}

interface AskProps {
  readonly name: string;
  readonly light: Round['build']['viewing']['light'];
  readonly wearings: readonly Wearing[];
  readonly answer: string | undefined;
  readonly onAnswer: (letter: string | undefined) => void;
}

function Ask({ name, light, wearings, answer, onAnswer }: AskProps) {
  const id = useId();
  const ways = wearings.map(({ letters }) => `as ${listed(letters)}`);
  return (
    <fieldset class="round-ask">
      <legend>
        <bdi>{name}</bdi>: {oneOf(ways)}?
      </legend>
      <div class="round-ways">
        {wearings.map(({ finish, letters }, at) => {
          const isChosen = answer !== undefined && letters.includes(answer);
          return (
            <label key={letters[0]} class={isChosen ? 'round-way is-chosen' : 'round-way'}>
              <input
                type="radio"
                class="round-press"
                name={id}
                checked={isChosen}
                onChange={() => onAnswer(letters[0])}
              />
              <span class="spoon">
                <Bowl finish={finish} light={light} />
                <span class="handle">
                  <span class="handle-name">{capital(ways[at]!)}</span>{' '}
                  <span class="handle-note">
                    <bdi>{finish.name}</bdi>
                  </span>
                </span>
              </span>
            </label>
          );
        })}
      </div>
      {answer === undefined ? null : (
        <button type="button" class="text-button" onClick={() => onAnswer(undefined)}>
          No answer about <bdi>{name}</bdi>
        </button>
      )}
    </fieldset>
  );
}

const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);
const joined = (words: readonly string[], last: string): string =>
  words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')}${last}${words.at(-1)}`;
const listed = (letters: readonly string[]): string => joined(letters, ' and ');
const oneOf = (ways: readonly string[]): string => joined(ways, ', or ');
