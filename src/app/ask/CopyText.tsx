/** Copies a text, and says so; where the browser lets no page copy, the text is marked to be copied. */
import { type RefObject, useState } from 'react';

interface CopyTextProps {
  /** Words on the button. */
  readonly name: string;
  /** The field that holds the text. */
  readonly field: RefObject<HTMLInputElement | HTMLTextAreaElement | null>;
}

/** A button, and what has become of the last press. */
export function CopyText({ name, field }: CopyTextProps) {
  const [told, setTold] = useState('');
  const copy = async (): Promise<void> => {
    const text = field.current?.value ?? '';
    try {
      await navigator.clipboard.writeText(text);
      setTold('Copied.');
    } catch {
      // Without a secure address, or where it was refused.
      field.current?.focus();
      field.current?.select();
      setTold('This browser leaves copying to you; the text is marked.');
    }
  };
  return (
    <span className="ask-copy">
      <button
        type="button"
        className="button button-strong"
        onBlur={() => setTold('')}
        onClick={() => void copy()}
      >
        {name}
      </button>
      <span role="status">{told}</span>
    </span>
  );
}
