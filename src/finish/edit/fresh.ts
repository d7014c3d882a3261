/**
 * What is a new finish before anything is known of it? A mid grey in gloss, guessed, or a copy of
 * one that is like it; with an id and a name that are free among those given. Its colour is a screen
 * colour, since that is what a builder has at hand first.
 */
import { freeId, freeName } from '../../ground/id.ts';
import type { Finish } from '../finish.ts';

const plain: Omit<Finish, 'id' | 'name'> = {
  effect: 'solid',
  colour: { srgb: '#808080' },
  gloss60: 78,
  coats: 2,
  chemistry: 'lacquer',
  undercoats: [],
  provenance: { how: 'guess' },
};

/** What is known of a new finish before it is edited. */
export interface Told {
  readonly name?: string | undefined;
  /** A screen code, `#rrggbb`. */
  readonly srgb?: string | undefined;
}

/** A new finish beside others; like another, down to its bottles, where one is given. */
export function freshFinish(others: readonly Finish[], like?: Finish, told: Told = {}): Finish {
  const name = freeName(
    told.name ?? (like === undefined ? 'New finish' : `Like ${like.name}`),
    others.map((finish) => finish.name),
  );
  const id = freeId(
    name,
    others.map((finish) => finish.id),
    'finish',
  );
  if (like !== undefined) return { ...plainFrom(like), id, name };
  return { id, name, ...plain, ...(told.srgb && { colour: { srgb: told.srgb } }) };
}

/** Without the rack that a finish of a build names. */
function plainFrom(like: Finish & { readonly rack?: string }): Finish {
  const { rack: _rack, ...finish } = like;
  return finish;
}
