/** What is put where the viewers are: a picture with letters alone, and a text ready to paste. */
import { useId, useMemo, useRef, useState } from 'react';
import { type Fill, fillsOf, type PostKind, postFor } from '../../opinion/post.ts';
import { lettersIn, type Round } from '../../opinion/round.ts';
import type { Shape } from '../picture/compose.ts';
import { canCopy, copyPicture, savePicture } from '../picture/handing.ts';
import { fileNameOf } from '../picture/words.ts';
import { Choice } from '../pieces/Choice.tsx';
import { useWork } from '../store.ts';
import { reachOf } from './base.ts';
import { CopyText } from './CopyText.tsx';
import { counted } from './length.ts';
import { neutralPicture } from './neutral.ts';
import type { Wanted } from './wanted.ts';

interface PostProps {
  readonly address: string;
  readonly round: Round;
  readonly wanted: Wanted;
}

const kinds: readonly { readonly value: PostKind; readonly name: string }[] = [
  { value: 'description', name: 'Description' },
  { value: 'comment', name: 'Comment' },
  { value: 'chat', name: 'Forum or chat' },
];
const shapes: readonly { readonly value: Shape; readonly name: string; readonly note: string }[] = [
  { value: 'wide', name: 'Wide', note: '16 : 9' },
  { value: 'square', name: 'Square', note: '1 : 1' },
];
/** As many as the picture holds. */
const mostCars = 4;

/** Picture and text. */
export function Post(props: PostProps) {
  return (
    <>
      <Picture {...props} />
      <Text {...props} />
    </>
  );
}

function Picture({ round, wanted }: PostProps) {
  const work = useWork();
  const [shape, setShape] = useState<Shape>('wide');
  const [told, setTold] = useState('');
  const letters = lettersIn(round);
  const name = fileNameOf(round.build, letters.slice(0, mostCars), `asked-${shape}`);
  const tell = (done: Promise<void>, words: string): void => {
    setTold('Drawing…');
    done.then(
      () => setTold(words),
      (error: unknown) => {
        const reason = error instanceof Error ? error.message : String(error);
        setTold(`No picture: ${reason}. Try again.`);
      },
    );
  };
  return (
    <section className="ask-picture">
      <h3>A picture for a post</h3>
      <p className="quiet">
        The cars as you see them now, with their letters; no names and no scores, so that nothing
        sways.
        {letters.length > mostCars ? ` The first ${mostCars} are in it.` : ''}
      </p>
      <Choice legend="Shape" value={shape} options={shapes} onChoose={setShape} />
      <div className="buttons">
        <button
          type="button"
          className="button"
          onClick={() =>
            tell(savePicture(neutralPicture(work, wanted, shape), name), `Saved as ${name}.`)
          }
        >
          Save picture
        </button>
        {canCopy() ? (
          <button
            type="button"
            className="button"
            onClick={() => tell(copyPicture(neutralPicture(work, wanted, shape)), 'Copied.')}
          >
            Copy picture
          </button>
        ) : null}
      </div>
      <p role="status">{told}</p>
    </section>
  );
}

function Text({ address, round }: PostProps) {
  const [kind, setKind] = useState<PostKind>('description');
  const made = useMemo(() => postFor(kind, round, { address }).text, [kind, round, address]);
  // What the builder has written lives as long as the text it was written over.
  const [own, setOwn] = useState<{ readonly over: string; readonly text: string }>();
  const text = own?.over === made ? own.text : made;
  const field = useRef<HTMLTextAreaElement>(null);
  const id = useId();
  return (
    <section className="ask-text">
      <h3>Ready text</h3>
      <Choice legend="Where it goes" value={kind} options={kinds} onChoose={setKind} />
      <div className="field">
        <label htmlFor={id}>Text; change it as you like</label>
        <textarea
          ref={field}
          id={id}
          dir="auto"
          rows={10}
          aria-describedby={`${id}-told`}
          value={text}
          onChange={({ currentTarget }) => setOwn({ over: made, text: currentTarget.value })}
        />
        <ul id={`${id}-told`} className="ask-fills">
          {fillsOf(kind, text).map((fill) => (
            <li key={fill.of} data-over={fill.over > 0 || undefined}>
              {fillWords(fill)}
            </li>
          ))}
        </ul>
      </div>
      {reachOf(address) === 'machine' ? (
        <p className="ask-warning">
          It holds an address that nobody else can open yet; see The link above.
        </p>
      ) : null}
      <div className="buttons">
        <CopyText key={kind} name="Copy text" field={field} />
        {text === made ? null : (
          <button type="button" className="button" onClick={() => setOwn(undefined)}>
            Back to the ready text
          </button>
        )}
      </div>
    </section>
  );
}

const places: Readonly<Record<Fill['of'], string>> = {
  'what is seen at once': 'First line, seen before “more”',
  'a comment': 'Whole text, as a comment',
  'a description': 'Whole text, as a description',
};

/** `First line, seen before “more”: 82 of 150 characters.` */
function fillWords({ of, unit, count, most, over }: Fill): string {
  const units = unit === 'bytes of UTF-8' ? 'bytes' : 'characters';
  const room = `${places[of]}: ${counted(count)} of ${counted(most)} ${units}`;
  return over > 0 ? `${room}, ${counted(over)} too many.` : `${room}.`;
}
