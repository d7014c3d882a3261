/**
 * Every speed figure as a ratio against something measured in the same run:
 * `npm run speed`, `npm run speed -- score`, `npm run --silent speed -- score --json`.
 */
import { parseArgs } from 'node:util';
import type { Row } from './row.ts';

const reports: Readonly<Record<string, () => Promise<Row[]>>> = {
  score: async () => (await import('./score.ts')).scoreRows(),
  page: async () => (await import('./page.ts')).pageRows(),
  stage: async () => (await import('./stage.ts')).stageRows(),
  viewer: async () => (await import('./viewer.ts')).viewerRows(),
  lighthouse: async () => (await import('./lighthouse.ts')).lighthouseRows(),
  link: async () => (await import('./link.ts')).linkRows(),
  ranking: async () => (await import('./ranking.ts')).rankingRows(),
};

const { values, positionals } = parseArgs({
  options: { json: { type: 'boolean', default: false } },
  allowPositionals: true,
});
const names = positionals.length > 0 ? positionals : Object.keys(reports);
for (const name of names) {
  const report = reports[name];
  if (report === undefined) {
    console.error(`No report is called ${name}; there are: ${Object.keys(reports).join(', ')}.`);
    process.exit(2);
  }
  const rows = await report();
  if (values.json) console.log(JSON.stringify({ name, rows }));
  else {
    for (const { id, value, unit, against, note } of rows) {
      console.log(
        `${id}  ${value.toFixed(value < 10 ? 2 : 0)} ${unit}  against ${against}\n    ${note}`,
      );
    }
  }
}
