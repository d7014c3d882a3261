/**
 * The published form of our files: writes a JSON Schema for builds, racks and sight tables to
 * `schema/` beside the page, under names that never change. Taken from the same schemas that read
 * the files, in their input form, so defaults may be left out.
 */
import { toJsonSchema } from '@valibot/to-json-schema';
import type * as v from 'valibot';
import type { Plugin } from 'vite';
import { buildSchema } from '../build/build.ts';
import { sightTableSchema } from '../car/table.ts';
import { rackSchema } from '../finish/rack/rack.ts';

const published: Readonly<Record<string, v.GenericSchema>> = {
  build: buildSchema,
  rack: rackSchema,
  sight: sightTableSchema,
};

/** Vite plugin that adds `schema/build.json`, `schema/rack.json` and `schema/sight.json`. */
export function schemas(): Plugin {
  return {
    name: 'testspoon-schemas',
    apply: 'build',
    generateBundle() {
      for (const [name, schema] of Object.entries(published)) {
        const text = toJsonSchema(schema, { typeMode: 'input', errorMode: 'ignore' });
        this.emitFile({
          type: 'asset',
          fileName: `schema/${name}.json`,
          source: `${JSON.stringify(text, null, 2)}\n`,
        });
      }
    },
  };
}
