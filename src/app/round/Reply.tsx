/** @jsxImportSource preact */
/**
 * How does the answer get back? As a few plain words that the viewer pastes where the link was
 * posted. The page sends nothing; it shows the text, copies it, or hands it to the phone.
 */
import { useRef, useState } from 'preact/hooks';

/** The reply as it will be pasted, with the ways to take it along. */
export function Reply({ text }: { text: string }) {
  const field = useRef<HTMLTextAreaElement>(null);
  const [said, setSaid] = useState({ words: '', of: text });
  const say = (words: string): void => setSaid({ words, of: text });
  const copy = async (): Promise<void> => say((await isCopied(text, field.current)) ? done : held);
  const share = async (): Promise<void> => {
    try {
      await navigator.share({ text });
    } catch (error) {
      // Closing the sheet is no fault.
      if (!(error instanceof DOMException && error.name === 'AbortError')) say(unshared);
    }
  };
  return (
    <section class="round-section round-reply" aria-labelledby="reply-title">
      <h2 id="reply-title" tabindex={-1}>
        Your reply
      </h2>
      <p>
        Nothing is sent from this page. Copy this and paste it where the link was posted, so that
        whoever asked can read it.
      </p>
      <textarea
        ref={field}
        class="entry round-text"
        aria-label="Your reply, as it will be pasted"
        readonly
        dir="auto"
        rows={Math.min(12, text.split('\n').length + 1 + Math.floor(text.length / 60))}
        value={text}
      />
      <div class="buttons">
        <button type="button" class="button button-strong" onClick={() => void copy()}>
          Copy reply
        </button>
        {'share' in navigator ? (
          <button type="button" class="button" onClick={() => void share()}>
            Share…
          </button>
        ) : null}
        <p class="round-said" role="status">
          {said.of === text ? said.words : ''}
        </p>
      </div>
    </section>
  );
}

const done = 'Copied. Now paste it where the link was posted.';
const held = 'This browser does not let a page copy. The reply is marked: copy it by hand.';
const unshared = 'The phone took no reply from this page. Copy it instead.';

/** Whether the text was copied; where no way was open, it is left selected. */
async function isCopied(text: string, field: HTMLTextAreaElement | null): Promise<boolean> {
  try {
    await navigator.clipboard.writeText(text);
    return true;
  } catch {
    field?.focus();
    field?.select();
    // Pages that come without encryption have no clipboard, only this older way.
    return document.execCommand('copy');
  }
}
