/**
 * A spoon was pressed for many parts at once: what came of it? Told in a line, since settled parts
 * wear it at once and open ones only may.
 */
import { type Build, type FinishRef, isOpen, letterOf, type OpenPart } from '../../build/build.ts';
import { listed, namesIn } from '../../build/rule.ts';

/** Parts or letters named before they are counted. */
const mostNamed = 3;

/** What has become of these parts since `before`, by their ids, now that `ref` was picked for them. */
export function pickedWords(
  before: Build,
  build: Build,
  ids: readonly string[],
  ref: FinishRef,
): string {
  const parts = build.parts.filter(({ id }) => ids.includes(id));
  const open = parts.filter(isOpen);
  const settled = parts.filter((part) => !isOpen(part));
  const finish = namesIn(build).finish(ref);
  const told: string[] = [];
  if (settled.length > 0) {
    told.push(`${partsIn(settled)} ${settled.length === 1 ? 'wears' : 'wear'} ${finish}`);
  }
  if (open.length > 0) {
    const isOld = open.every(({ id }) =>
      before.parts.some((part) => part.id === id && isOpen(part) && part.candidates.includes(ref)),
    );
    const which = isOld ? 'was a candidate already' : 'is now a candidate';
    told.push(`${finish} ${which} of ${partsIn(open)}`, ...wearersIn(build, open));
  }
  return `${told.join('; ')}.`;
}

const partsIn = (parts: readonly { readonly name: string }[]): string =>
  parts.length > mostNamed ? `${parts.length} parts` : listed(parts.map(({ name }) => name));

/** What each alternative wears on these parts: `A wears Duck egg`. */
function wearersIn(build: Build, parts: readonly OpenPart[]): string[] {
  const names = namesIn(build);
  if (build.alternatives.length > mostNamed) return [];
  const letters = new Map<string, string[]>();
  build.alternatives.forEach(({ choices }, at) => {
    const [ref, ...others] = new Set(parts.map(({ id }) => choices[id]));
    const worn = others.length === 0 ? names.finish(ref) : 'several finishes on them';
    letters.set(worn, [...(letters.get(worn) ?? []), letterOf(at)]);
  });
  return [...letters].map(
    ([worn, who]) => `${listed(who)} ${who.length === 1 ? 'wears' : 'wear'} ${worn}`,
  );
}
