/**
 * `npm run fuzz`: a million damaged links, or as many as asked for with `--count`, from a seed that
 * is printed and can be given again with `--seed`. Seeds kept in `seeds.txt` come first, and those in
 * which something fails are kept there. Figures by damage and fault; exit status 1 where a link
 * crashed the reader or opened as another round.
 */
import { parseArgs } from 'node:util';
import { stock } from '../opinion/link/rounds.ts';
import { fuzzInBatches, keepSeed, keptSeeds } from './batches.ts';

const { values } = parseArgs({
  options: {
    count: { type: 'string', default: '1000000' },
    seed: { type: 'string', default: '20311126' },
  },
});
const count = Number(values.count);
const seed = Number(values.seed);
if (!(Number.isSafeInteger(count) && count > 0 && Number.isSafeInteger(seed) && seed >= 0)) {
  console.error('--count takes a whole number above 0, --seed one from 0.');
  process.exit(2);
}
console.log(`${count} links, --seed ${seed}, after ${keptSeeds().length} seeds kept`);
const now = (): number => performance.now();
const start = now();
const outcome = fuzzInBatches(stock, count, seed, now);
const { links, refused, asSent, asWritten, slowestMs, failures, failedSeeds } = outcome;
const seconds = (now() - start) / 1000;
console.log(
  `${links} links, ${Math.round(links / seconds)} a second, slowest ${slowestMs.toFixed(0)} ms`,
);
for (const [damage, faults] of Object.entries(refused)) console.log(`  ${damage}`, faults);
console.log(`opened as sent, whole in what was pasted: ${asSent}`);
console.log(`opened as exactly what a changed and sealed text says: ${asWritten}`);
console.log(failures.length === 0 ? 'no failure' : `${failures.length} failures`);
for (const failure of failures.slice(0, 20)) console.log(failure);
for (const one of failedSeeds) keepSeed(one);
if (failures.length > 0) process.exitCode = 1;
