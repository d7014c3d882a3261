/** A part that is ranked: its name, and at which finish it is held for this ranking, if at one. */
import { type Build, finishesByRef, type OpenPart } from '../../build/build.ts';
import { heldIn } from '../../ranking/held.ts';
import { hold, useSearch } from './search.ts';

/** The name as a label, and a list of the candidates. */
export function Hold({ part, build }: { part: OpenPart; build: Build }) {
  const held = useSearch((search) => heldIn(build, search.held)[part.id]);
  const finishes = finishesByRef(build);
  return (
    <label className="ranking-hold">
      <bdi>{part.name}</bdi>
      <select
        className={held === undefined ? 'ranking-free' : 'ranking-fixed'}
        value={held ?? ''}
        onChange={({ currentTarget: { value } }) => hold(part.id, value === '' ? undefined : value)}
      >
        <option value="">any of {part.candidates.length}</option>
        {part.candidates.map((ref) => (
          <option key={ref} value={ref}>
            {finishes.get(ref)?.name ?? ref}
          </option>
        ))}
      </select>
    </label>
  );
}
