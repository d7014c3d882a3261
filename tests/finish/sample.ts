/** Small finishes for tests: one valid finish, changed where a test says so. */
import * as v from 'valibot';
import { type Finish, finishSchema } from '../../src/finish/finish.ts';

/** A finish as it is written in a file, any part of it. */
export type Written = Partial<v.InferInput<typeof finishSchema>>;

/** A glossy mid grey solid unless `changes` say otherwise; defaults of the schema filled in. */
export const finishWith = (changes: Written = {}): Finish =>
  v.parse(finishSchema, {
    id: 'sample',
    name: 'Sample',
    effect: 'solid',
    colour: { lab: [54, 0, 0] },
    gloss60: 86,
    provenance: { how: 'measured' },
    ...changes,
  });

export const silverBase: NonNullable<Written['undercoats']>[number] = {
  name: 'Fine silver base',
  role: 'base',
  effect: 'metallic',
  colour: { lab: [78, 0, -1] },
  chemistry: 'lacquer',
};
