/**
 * `npm run fuzz`: a million damaged links, or as many as asked for with `--links`, from a seed that
 * is printed and can be given again with `--seed`. Figures by damage and fault; exit status 1 where
 * a link crashed the reader or opened as another round.
 */
import { parseArgs } from 'node:util';
import { stock } from '../opinion/link/rounds.ts';
import { fuzz } from './engine.ts';

const { values } = parseArgs({
  options: { links: { type: 'string', default: '1000000' }, seed: { type: 'string' } },
});
const count = Number(values.links);
const seed = Number(values.seed ?? 20311126);
console.log(`${count} links, --seed ${seed}`);
const now = (): number => performance.now();
const start = now();
const { refused, asSent, asWritten, slowestMs, failures } = fuzz(stock, count, seed, now);
const seconds = (now() - start) / 1000;
console.log(`${Math.round(count / seconds)} links a second, slowest ${slowestMs.toFixed(0)} ms`);
for (const [damage, faults] of Object.entries(refused)) console.log(`  ${damage}`, faults);
console.log(`opened as sent, whole in what was pasted: ${asSent}`);
console.log(`opened as exactly what a changed and sealed text says: ${asWritten}`);
console.log(failures.length === 0 ? 'no failure' : `${failures.length} failures`);
for (const failure of failures.slice(0, 20)) console.log(failure);
if (failures.length > 0) process.exitCode = 1;
