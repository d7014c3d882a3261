/**
 * What can a builder do to the rules of a build? Add, replace, take out. A build in, a build out;
 * rules may contradict each other while they are being changed (`choice/contradiction` says so).
 */
import type { Build, Rule } from '../build.ts';

/** Rules a build may hold, as the file format has it. */
export const mostRules = 500;

/** Adds a rule at the end; one more than fits changes nothing. */
export const addRule = (build: Build, rule: Rule): Build =>
  build.rules.length >= mostRules ? build : { ...build, rules: [...build.rules, rule] };

/** Puts another rule in the place of one, counted from 0. */
export const replaceRule = (build: Build, at: number, rule: Rule): Build =>
  at in build.rules ? { ...build, rules: build.rules.with(at, rule) } : build;

/** Takes a rule out, counted from 0. */
export const removeRule = (build: Build, at: number): Build =>
  at in build.rules ? { ...build, rules: build.rules.toSpliced(at, 1) } : build;
