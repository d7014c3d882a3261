/** @jsxImportSource preact */
/**
 * Which one? The cars of a round, the choice, what the builder asks besides, and the reply. Any
 * answer may be changed at any time; the reply follows.
 */
import { useMemo, useState } from 'preact/hooks';
import { type Answer, longestWords, type Pair } from '../../opinion/answer.ts';
import { markOf } from '../../opinion/mark.ts';
import { shuffled } from '../../opinion/order.ts';
import { replyOf } from '../../opinion/reply/write.ts';
import { lettersIn, type Round } from '../../opinion/round.ts';
import { Asks } from './Asks.tsx';
import { Choosing } from './choosing/Choosing.tsx';
import { Grains } from './drawn/Grains.tsx';
import { Reply } from './Reply.tsx';
import { useScene } from './scene.ts';
import { seedFor } from './seed.ts';
import { Turning } from './Turning.tsx';
import { wornByLetter } from './worn.ts';

interface RoundPageProps {
  readonly round: Round;
  /** What stands behind `#` in the address of this round. */
  readonly link: string;
}

/** What has been said so far. */
interface Said {
  readonly letter: string | undefined;
  readonly pairs: readonly Pair[];
}

/** The page of one round. */
export function RoundPage({ round, link }: RoundPageProps) {
  const { build, asks } = round;
  const letters = useMemo(() => shuffled(lettersIn(round), seedFor(markOf(round))), [round]);
  const worn = useMemo(() => wornByLetter(round), [round]);
  const scene = useScene(round);
  const [{ letter, pairs }, setSaid] = useState<Said>({ letter: undefined, pairs: [] });
  const [parts, setParts] = useState<Answer['parts']>({});
  const [words, setWords] = useState('');
  const reply =
    letter === undefined
      ? undefined
      : replyOf(round, { letter, parts, pairs, words: words.trim() });
  const answerPart = (part: string, wanted: string | undefined): void =>
    setParts(({ [part]: _before, ...others }) =>
      wanted === undefined ? others : { ...others, [part]: wanted },
    );
  return (
    <main class="round">
      <Grains />
      <header class="round-head">
        <h1>
          <bdi>{build.name}</bdi>
        </h1>
        {build.story === undefined ? null : <Story words={build.story} />}
      </header>
      {scene.state === 'missing' ? (
        <div class="round-missing" role="alert">
          <p>The pictures could not be fetched. You can answer by the words, or try again.</p>
          <button type="button" class="button" onClick={scene.again}>
            Try again
          </button>
        </div>
      ) : null}
      <Choosing
        round={round}
        scene={scene}
        letters={letters}
        worn={worn}
        chosen={letter}
        pairs={pairs}
        onSay={(chosen, put) => setSaid({ letter: chosen, pairs: put })}
      />
      {scene.car === undefined ? null : <Turning round={round} car={scene.car} letters={letters} />}
      <div class={letter === undefined ? 'round-next' : 'round-next is-chosen'}>
        <p role="status">{letter === undefined ? '' : <span>You chose {letter}.</span>}</p>
        {letter === undefined ? null : (
          <button type="button" class="button button-strong" onClick={() => goTo('reply-title')}>
            To your reply
          </button>
        )}
      </div>
      {reply === undefined ? null : (
        <>
          {asks.length === 0 ? null : (
            <Asks
              round={round}
              letters={letters}
              worn={worn}
              answers={parts}
              onAnswer={answerPart}
            />
          )}
          <section class="round-section">
            <label class="round-words">
              <span class="round-label">Anything to say? It may stay empty.</span>
              <textarea
                class="entry"
                dir="auto"
                rows={2}
                maxlength={longestWords}
                value={words}
                onInput={({ currentTarget }) => setWords(currentTarget.value)}
              />
            </label>
          </section>
          <Reply text={reply} />
        </>
      )}
      <footer class="round-foot">
        <p>
          <a href={`./index.html#start-${letter ?? '0'}-${link}`}>Start from this</a>
          <span class="quiet">
            {' '}
            takes {letter === undefined ? 'these schemes' : `scheme ${letter}`} to a bench of your
            own, where you can change {letter === undefined ? 'them' : 'it'}.
          </span>
        </p>
      </footer>
    </main>
  );
}

/** A story of more UTF-16 units than this is folded away: the cars come first. */
const shortStory = 120;

function Story({ words }: { words: string }) {
  const story = (
    <p class="round-story" dir="auto">
      {words}
    </p>
  );
  if (words.length <= shortStory) return story;
  return (
    <details>
      <summary>The story of this build</summary>
      {story}
    </details>
  );
}

/** Brings a heading into sight and the focus to it; the address, which is the link, stays. */
function goTo(id: string): void {
  const heading = document.getElementById(id);
  heading?.focus({ preventScroll: true });
  heading?.scrollIntoView({ block: 'start' });
}
