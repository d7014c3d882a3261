/**
 * What becomes of work that would not open again if it were kept? It never takes the place of what
 * opens: the build stays kept as it was before, the work is put aside under Builds in a line of its
 * own, and the builder is told. Once the work can be kept again, by undo or by the next change, the
 * line goes.
 *
 * No edit of ours is known to leave such work; this is for those that are not known.
 */
import { cutText, longestName } from '../../ground/id.ts';
import { type Problem, problemSentence } from '../../ground/problem.ts';
import type { Work } from '../store.ts';
import { say, unsay } from './status.ts';
import { keepBuild, removeBuild, revisionOf } from './store/builds.ts';

const ending = ' (set aside)';
const notice = 'set-aside-work';
/** Keys of work that this tab has put aside. */
const aside = new Set<string>();

/** Whether the work under this key is aside, rather than kept. */
export const isAside = (key: string): boolean => aside.has(key);

const keyAside = (key: string): string => `${key}-aside`;

/** Puts work aside and says so; what was put aside of it before gives way. */
export async function putAside({ key, build }: Work, problems: readonly Problem[]): Promise<void> {
  const name = `${cutText(build.name, longestName - ending.length)}${ending}`;
  await keepBuild(keyAside(key), { ...build, name }, await revisionOf(keyAside(key)));
  aside.add(key);
  const [first] = problems;
  const why = first === undefined ? '' : ` (${problemSentence(first)})`;
  say({
    id: notice,
    text:
      `The last change left something that could not be opened again${why}. So the build stays ` +
      `kept as it was before, and with the change it is put aside under Builds as “${name}”. ` +
      'Undo takes the change back.',
    remedies: ['builds'],
  });
}

/** The work is kept again: nothing of it need stay aside. */
export async function takeFromAside(key: string): Promise<void> {
  if (!aside.has(key)) return;
  await removeBuild(keyAside(key));
  aside.delete(key);
  if (aside.size === 0) unsay(notice);
}
