/** What the figures of the ranking are measured on; bundled before it is run. */
export { cheapest } from '../../src/ranking/enumerate.ts';
export { rankBuild } from '../../src/ranking/rank.ts';
export { best } from '../../src/ranking/solve/solve.ts';
export { judge } from '../../src/score/judged.ts';
