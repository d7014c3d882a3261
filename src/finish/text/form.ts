/**
 * Which of several forms is an entry meant to have? A plain union tries them all and, where none
 * fits, can only say so; here the form is picked by what the entry holds, so that every fault is
 * told for the form that was meant. What is accepted is the same.
 */
import type * as v from 'valibot';

/**
 * `forms` read by the one that `meant` picks from the value, by position; undefined where it
 * cannot tell, and all are tried.
 */
export const pickedForm = <Forms extends v.UnionOptions>(
  forms: v.UnionSchema<Forms, undefined>,
  meant: (value: unknown) => number | undefined,
): v.UnionSchema<Forms, undefined> => ({
  ...forms,
  '~run'(dataset, settings) {
    const at = meant(dataset.value);
    const form = at === undefined ? undefined : forms.options[at];
    return (form ?? forms)['~run'](dataset, settings) as ReturnType<(typeof forms)['~run']>;
  },
});
