/**
 * What is a new finish before anything is known of it? A semi-gloss mid grey, guessed, or a copy of
 * one that is like it; with an id and a name that are free among those given.
 */
import { freeId, freeName } from '../../ground/id.ts';
import type { Finish } from '../finish.ts';

const plain: Omit<Finish, 'id' | 'name'> = {
  effect: 'solid',
  colour: { lab: [54, 0, 0], light: 'D65' },
  gloss60: 78,
  coats: 2,
  chemistry: 'lacquer',
  undercoats: [],
  provenance: { how: 'guess' },
};

/** A new finish beside others; like another, down to its bottles, where one is given. */
export function freshFinish(others: readonly Finish[], like?: Finish): Finish {
  const name = freeName(
    like === undefined ? 'New finish' : `Like ${like.name}`,
    others.map((finish) => finish.name),
  );
  const id = freeId(
    name,
    others.map((finish) => finish.id),
    'finish',
  );
  return like === undefined ? { id, name, ...plain } : { ...plainFrom(like), id, name };
}

/** Without the rack that a finish of a build names. */
function plainFrom(like: Finish & { readonly rack?: string }): Finish {
  const { rack: _rack, ...finish } = like;
  return finish;
}
