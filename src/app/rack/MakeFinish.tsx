/**
 * No spoon is right, or there is none: the way from a search to a finish of one's own. It gets the
 * name and the colour that were typed, and whoever searched gets it at once.
 */
import type { EmbeddedFinish } from '../../build/build.ts';
import { makeFinish } from '../finish/fresh.ts';
import { useRacks } from '../store.ts';
import type { Found } from './found.ts';
import { typedFrom } from './typed.ts';

interface MakeFinishProps {
  /** As it was typed: words, perhaps with a colour among them. */
  readonly typed: string;
  readonly found: Found;
  /** Rack it goes onto; the first where none is said. */
  readonly into?: string | undefined;
  readonly onMade: (finish: EmbeddedFinish) => void;
}

const longest = 120;

/** A button; small print while there are spoons to choose from. */
export function MakeFinish({ typed, found, into, onMade }: MakeFinishProps) {
  const racks = useRacks();
  const { words, srgb } = typedFrom(typed);
  const name = words.trim().replace(/\s+/g, ' ').slice(0, longest).trim();
  const isThere = found.finishes.some((one) => one.name.toLowerCase() === name.toLowerCase());
  if (racks === undefined || isThere) return null;
  const told = { ...(name !== '' && { name }), ...(srgb !== undefined && { srgb }) };
  return (
    <button
      type="button"
      className={found.finishes.length === 0 ? 'button make-finish' : 'text-button make-finish'}
      onClick={() => makeFinish(told, into, onMade)}
    >
      {name === '' ? 'Make a new finish' : 'Make a finish called '}
      {name === '' ? null : <bdi>“{name}”</bdi>}…
    </button>
  );
}
