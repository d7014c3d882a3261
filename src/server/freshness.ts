/**
 * Must the page be built again before it is served? It must where it is missing, or where anything
 * it is made of was changed, added or taken away since.
 */
import { readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';

/** Time of the last change in a file or anywhere under a folder, ms; 0 where it is missing. */
export function lastChangeOf(path: string): number {
  const stats = statSync(path, { throwIfNoEntry: false });
  if (stats === undefined) return 0;
  if (!stats.isDirectory()) return stats.mtimeMs;
  // A folder's own time tells of files added to it and taken out of it.
  return readdirSync(path).reduce(
    (latest, name) => Math.max(latest, lastChangeOf(join(path, name))),
    stats.mtimeMs,
  );
}

/** Whether `built` is missing or older than any of `sources`. */
export function isStale(built: string, sources: readonly string[]): boolean {
  const builtAt = statSync(built, { throwIfNoEntry: false })?.mtimeMs;
  return builtAt === undefined || sources.some((source) => lastChangeOf(source) > builtAt);
}
