/**
 * Measures what is seen of a car from where and stores it beside the GLB, one part or border to a
 * line so that a change can be read in a diff.
 */
import { createHash } from 'node:crypto';
import { measureSight } from '../src/car/sight.ts';
import type { SightTable } from '../src/car/table.ts';

/** Sight table of a car from the bytes of its GLB, with their SHA-256. */
export async function sightOfGlb(
  bytes: Uint8Array,
  car: string,
  name: string,
): Promise<SightTable> {
  const meshSha256 = createHash('sha256').update(bytes).digest('hex');
  return measureSight(bytes, { car, name, meshSha256 });
}

/** A sight table as the text of its file. */
export function textOfSight(sight: SightTable): string {
  const lines = (list: readonly unknown[]): string =>
    `[\n${list.map((one) => `    ${JSON.stringify(one)}`).join(',\n')}\n  ]`;
  const entries = Object.entries(sight).map(
    ([key, value]) =>
      `  ${JSON.stringify(key)}: ${Array.isArray(value) ? lines(value) : JSON.stringify(value)}`,
  );
  return `{\n${entries.join(',\n')}\n}\n`;
}
