/**
 * What can a builder do to the rules of a build? Add, replace, take out. A build in, a build out
 * that `buildFrom` accepts: a rule that names a part, a finish or a day that is not there changes
 * nothing. Rules may contradict each other while they are being changed (`choice/contradiction`
 * says so).
 */
import * as v from 'valibot';
import { type Build, type Rule, ruleSchema } from '../build.ts';
import { ruleProblems } from '../reference.ts';

/** Rules a build may hold, as the file format has it. */
export const mostRules = 500;

const fits = (build: Build, rule: Rule): boolean =>
  v.is(ruleSchema, rule) && ruleProblems(build, rule).length === 0;

/** Adds a rule at the end; one more than fits, or one that does not fit, changes nothing. */
export const addRule = (build: Build, rule: Rule): Build =>
  build.rules.length >= mostRules || !fits(build, rule)
    ? build
    : { ...build, rules: [...build.rules, rule] };

/** Puts another rule in the place of one, counted from 0; one that does not fit changes nothing. */
export const replaceRule = (build: Build, at: number, rule: Rule): Build =>
  at in build.rules && fits(build, rule) ? { ...build, rules: build.rules.with(at, rule) } : build;

/** Takes a rule out, counted from 0. */
export const removeRule = (build: Build, at: number): Build =>
  at in build.rules ? { ...build, rules: build.rules.toSpliced(at, 1) } : build;
