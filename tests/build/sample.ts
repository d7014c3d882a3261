/** Small builds for tests: plain finishes by name, parts, rules, and seeded random builds. */
import { type Build, buildVersion, type Rule } from '../../src/build/build.ts';
import { buildFrom } from '../../src/build/read/document.ts';
import type { Draw } from '../../src/ground/draw.ts';

/** A finish of rack `shelf`, needing a bottle of its own name; bottles in `toBuy` are missing. */
export const plainFinish = (id: string, toBuy: readonly string[] = [], more: object = {}) => ({
  rack: 'shelf',
  id,
  name: id[0]!.toUpperCase() + id.slice(1),
  effect: 'solid',
  colour: { lab: [50, 0, 0] },
  gloss60: 88,
  chemistry: 'lacquer',
  provenance: { how: 'guess' },
  bottle: { id, name: `${id} bottle`, onHand: !toBuy.includes(id), leadDays: 3 },
  ...more,
});

export interface Sketch {
  readonly finishes?: readonly string[];
  readonly toBuy?: readonly string[];
  /** Part id → candidates (a list), or the one finish it wears. */
  readonly parts: Readonly<Record<string, string | readonly string[]>>;
  readonly painted?: readonly string[];
  readonly rules?: readonly Rule[];
}

export const ref = (id: string): string => `shelf/${id}`;

/** A build from a sketch; its one alternative takes the first candidate of each open part. */
export function sketched({ finishes, toBuy, parts, painted = [], rules = [] }: Sketch): Build {
  const used = finishes ?? [...new Set(Object.values(parts).flat())];
  return buildFrom(plainDocument(used, toBuy ?? [], parts, painted, rules));
}

/** The same as a document, before it is read: tests spoil one thing in it. */
export function plainDocument(
  finishes: readonly string[],
  toBuy: readonly string[],
  parts: Sketch['parts'],
  painted: readonly string[] = [],
  rules: readonly Rule[] = [],
) {
  const made = Object.entries(parts).map(([id, wears]) => ({
    id,
    name: id[0]!.toUpperCase() + id.slice(1),
    covers: [id],
    ...(typeof wears === 'string'
      ? { finish: ref(wears), painted: painted.includes(id) }
      : { candidates: wears.map(ref) }),
  }));
  const choices = Object.fromEntries(
    Object.entries(parts).flatMap(([id, wears]) =>
      typeof wears === 'string' ? [] : [[id, ref(wears[0]!)]],
    ),
  );
  return {
    format: 'testspoon-build',
    version: buildVersion,
    id: 'sketch',
    name: 'Sketch',
    car: 'roadster',
    scale: 24,
    viewing: { distanceMm: 400, light: 'D65' },
    finishes: finishes.map((id) => plainFinish(id, toBuy)),
    parts: made,
    rules,
    alternatives: [{ id: 'first', name: 'First', choices }],
  };
}

const pick = <Entry>(draw: Draw, list: readonly Entry[]): Entry => list[draw.below(list.length)]!;
const some = <Entry>(draw: Draw, list: readonly Entry[], least: number): Entry[] => {
  const shuffled = list
    .map((entry) => ({ entry, at: draw.uniform() }))
    .sort((a, b) => a.at - b.at)
    .map(({ entry }) => entry);
  return shuffled.slice(0, least + draw.below(list.length - least + 1));
};

/** A random build of 2–5 parts over 2–4 finishes with 1–7 choice rules; many contradict. */
export function randomBuild(draw: Draw): Build {
  const finishes = ['red', 'teal', 'sand', 'slate'].slice(0, 2 + draw.below(3));
  const ids = ['body', 'stripes', 'mirrors', 'wheels', 'seats'].slice(0, 2 + draw.below(4));
  const parts = Object.fromEntries(
    ids.map((id) => [id, draw.uniform() < 0.2 ? pick(draw, finishes) : some(draw, finishes, 1)]),
  );
  const wears = () => ({ part: pick(draw, ids), finish: ref(pick(draw, finishes)) });
  const rules = Array.from({ length: 1 + draw.below(7) }, (): Rule => {
    const kind = draw.uniform();
    if (kind < 0.3) return { kind: 'same', parts: some(draw, ids, 2) };
    if (kind < 0.6) {
      const oneOf = some(draw, finishes, 1).slice(0, 2).map(ref);
      return { kind: 'if-then', when: wears(), wants: { part: pick(draw, ids), oneOf } };
    }
    if (kind < 0.8) return { kind: 'never-together', first: wears(), second: wears() };
    if (kind < 0.9) return { kind: 'most-finishes', count: draw.below(4) };
    return { kind: 'most-new-bottles', count: draw.below(3) };
  });
  const painted = ids.filter(() => draw.uniform() < 0.5);
  return sketched({ finishes, toBuy: some(draw, finishes, 0), parts, painted, rules });
}
