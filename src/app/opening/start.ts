/**
 * What is on the bench when the page opens? The work kept on the last visit, else the demo.
 * Opening a file runs through the same door: it is read and checked whole before anything on the
 * bench is touched.
 */
import type { Build } from '../../build/build.ts';
import { checkAgainstCar } from '../../build/coverage.ts';
import demoUrl from '../../build/demo.json?url';
import { buildFrom, parseBuild } from '../../build/file.ts';
import { parseJson } from '../../finish/parse.ts';
import { InputError } from '../../ground/problem.ts';
import type { Work } from '../store.ts';
import { carFrom, textOf } from './garage.ts';
import { keptText, setAside } from './keep.ts';

/** Work that no browser keeps yet. */
export type FreshWork = Omit<Work, 'key'>;

/** Work from the text of a build file. Throws `InputError` with every problem. */
export const workFrom = async (text: string, source: string): Promise<FreshWork> =>
  onItsCar(parseBuild(text, source), source);

async function onItsCar(build: Build, source: string): Promise<FreshWork> {
  const car = await carFrom(build.car, source);
  const problems = checkAgainstCar(build, car.sight);
  if (problems.length > 0) throw new InputError(problems, source);
  return { build, car };
}

/** The demo as it was made. */
export const demoWork = async (): Promise<FreshWork> => workFrom(await textOf(demoUrl), 'the demo');

/** The work to open with; `isKept` where it is the builder's own from the last visit. */
export async function firstWork(): Promise<{
  work: FreshWork;
  isKept: boolean;
  /** Kept work could not be opened: it was set aside, or could not even be that. */
  unreadable: 'set-aside' | 'left' | undefined;
}> {
  const source = 'your last visit';
  const text = keptText();
  if (text === undefined) return { work: await demoWork(), isKept: false, unreadable: undefined };
  try {
    // Rules may contradict each other in work under way, which a file to open must not.
    const build = buildFrom(parseJson(text, source), source);
    return { work: await onItsCar(build, source), isKept: true, unreadable: undefined };
  } catch {
    const unreadable = setAside(text) ? 'set-aside' : 'left';
    return { work: await demoWork(), isKept: false, unreadable };
  }
}
