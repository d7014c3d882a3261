/**
 * How does a build come onto the bench? From a file, from what the browser has kept, or as the
 * demo: all through one door, where it is read and checked whole before anything on the bench is
 * touched.
 */
import type { Build } from '../../build/build.ts';
import { checkAgainstCar } from '../../build/coverage.ts';
import demoUrl from '../../build/demo.json?url';
import { buildFrom } from '../../build/read/document.ts';
import { parseJson } from '../../finish/parse.ts';
import { InputError, type Problem } from '../../ground/problem.ts';
import type { Work } from '../store.ts';
import { carFrom, textOf } from './garage.ts';

/** Work that has no key yet. */
export type FreshWork = Omit<Work, 'key'>;

/**
 * Work from the text of a build file. Throws `InputError` with every problem. Rules may contradict
 * each other: what Save has written opens again, and the rules tell of it where they stand.
 */
export async function workFrom(text: string, source: string): Promise<FreshWork> {
  const { openBuild } = await import('../../build/file.ts');
  return onItsCar(openBuild(text, source), source);
}

/** Work from a document the browser has kept. Throws like `workFrom`. */
export const workFromKept = async (document: unknown, source: string): Promise<FreshWork> =>
  onItsCar(buildFrom(document, source), source);

async function onItsCar(build: Build, source: string): Promise<FreshWork> {
  const car = await carFrom(build.car, { source });
  const problems = checkAgainstCar(build, car.sight);
  if (problems.length > 0) throw new InputError(problems, source);
  return { build, car };
}

/** Why this work would not open again were it kept as it is; nothing where it would. */
export function openingProblems({ build, car }: FreshWork): readonly Problem[] {
  try {
    return checkAgainstCar(buildFrom(build), car.sight);
  } catch (error) {
    if (error instanceof InputError) return error.problems;
    throw error;
  }
}

const untouched = new WeakSet<Build>();

/** Whether this is the demo just as it was made, which is nobody's own and need not be kept. */
export const isUntouchedDemo = (build: Build): boolean => untouched.has(build);

/** The demo as it was made. */
export async function demoWork(): Promise<FreshWork> {
  const source = 'the demo';
  const work = await workFromKept(parseJson(await textOf(demoUrl), source), source);
  untouched.add(work.build);
  return work;
}
