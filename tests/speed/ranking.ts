/**
 * How quick is ranking? Against plain objects, against toulbar2 where it is installed (an independent
 * exact solver, a Debian package), and against a frame in the everyday case. CPU time for ours, for
 * toulbar2 its own count of solving time.
 */
import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import { type Build, type Part, refOf } from '../../src/build/build.ts';
import { drawFrom } from '../../src/ground/draw.ts';
import type { Network } from '../../src/ranking/network.ts';
import type { Found } from '../../src/ranking/solve/solve.ts';
import { asked, exchanged, isInstalled } from '../ranking/exchange.ts';
import { generated, type Instance, networkOf, type Shape } from '../ranking/generated.ts';
import { plainCost } from '../ranking/plain.ts';
import { sight, stocked, today } from '../ranking/rank-builds.ts';
import { bundled } from './bundled.ts';
import { frameSeconds } from './change.ts';
import type * as ranked from './ranked.ts';
import { median, paired, type Row, spent } from './row.ts';

const { best, cheapest, judge, rankBuild } = await bundled<typeof ranked>('tests/speed/ranked.ts');

/** Costs of generated instances are whole numbers. */
const tolerance = 0.9;
const rows = 20;
/** Rankings before the everyday case is timed. */
const warmUp = 60;

/** All figures of the ranking. */
export function rankingRows(): Row[] {
  // Before anything else has left garbage behind.
  const memory = memoryRows();
  const withOther = isInstalled() ? [agreementRow(), ...solverRows()] : [];
  if (withOther.length === 0) console.error('toulbar2 is not installed: its figures are left out.');
  const reported = [...pairsRows(), ...memory, ...growthRows()];
  return [everydayRow(), enumerationRow(), ...withOther, ...reported];
}

const cpuSeconds = (): number => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1e6;
};

interface Timed extends Found {
  readonly seconds: number;
}

function solved(network: Network, limitSeconds = 30): Timed {
  const start = cpuSeconds();
  const isOver = (): boolean => cpuSeconds() - start > limitSeconds;
  return { ...best(network, { count: rows, tolerance, isOver }), seconds: cpuSeconds() - start };
}

/** Share of instances on which both find one optimum. */
function agreementRow(): Row {
  let agreed = 0;
  let proved = 0;
  for (let seed = 0; seed < 72; seed++) {
    const shape: Shape = {
      parts: 5 + (seed % 8),
      candidates: [10, 30, 60][seed % 3]!,
      graph: (['car', 'fan', 'full'] as const)[(seed >> 1) % 3]!,
      unary: (['strong', 'mid', 'weak'] as const)[(seed >> 2) % 3]!,
      withGlobals: seed % 4 === 0,
      seed,
    };
    const instance = generated(shape);
    const network = networkOf(instance);
    const { optimum } = asked(exchanged(instance, network), { limitSeconds: 20 });
    if (optimum === undefined) continue;
    proved++;
    const { isProved, best: found } = solved(network);
    if (isProved && found[0]?.cost === optimum) agreed++;
  }
  return {
    id: 'rank.agreement',
    value: proved === 0 ? 0 : agreed / proved,
    unit: 'of 1',
    against: 'the optimum that toulbar2 proves',
    note: `proved by both alike on ${agreed} of the ${proved} generated instances that toulbar2 proves in 20 s, rules, bottles and echo among them`,
  };
}

/** Schemes a second, against the plain objects. */
function enumerationRow(): Row {
  const instance = generated({
    parts: 12,
    candidates: 4,
    graph: 'car',
    unary: 'mid',
    withRules: false,
    seed: 7,
    finishes: 60,
  });
  const network = networkOf(instance);
  const draw = drawFrom(5);
  const scheme = (): number[] => instance.candidates.map((list) => draw.below(list.length));
  const schemes = Array.from({ length: 200 }, scheme);
  let sum = 0;
  const { visited } = cheapest(network, rows);
  const timed = paired(
    () => {
      sum += cheapest(network, rows).best.length;
    },
    () => {
      for (const one of schemes) sum += plainCost(instance, one);
    },
    { samples: 5, sampleMs: 400 },
  );
  const ours = timed.one / visited;
  const plain = timed.other / schemes.length;
  return {
    id: 'rank.enumeration',
    value: plain / ours,
    unit: '×',
    against: 'plain objects with a CIEDE2000 call per part and pair',
    note: `12 parts; ours ${(1e-6 / ours).toFixed(1)} million schemes a second, plain ${(1 / plain).toFixed(0)} (${sum > 0 ? 'all' : 'none'} counted)`,
  };
}

/** Car graphs of 300 candidates: a proved top 20 of ours against one best of toulbar2. */
function solverRows(): Row[] {
  const cases: { name: string; ours: number; given: number; alone: number }[] = [];
  for (const parts of [12, 16]) {
    for (const unary of ['strong', 'mid', 'weak'] as const) {
      for (const seed of [1, 2, 3]) {
        const instance = instanceOf({ parts, candidates: 300, graph: 'car', unary, seed });
        const network = networkOf(instance);
        const ours = [solved(network), solved(network), solved(network)];
        if (ours.some(({ isProved }) => !isProved))
          throw new Error(`${parts} ${unary} ${seed}: unproved`);
        const text = exchanged(instance, network);
        const limitSeconds = 20;
        const below = ours[0]!.best[0]!.cost + 1;
        const given = asked(text, { limitSeconds, below });
        const alone = asked(text, { limitSeconds });
        for (const { optimum } of [given, alone]) {
          if (optimum !== undefined && optimum !== ours[0]!.best[0]!.cost) {
            throw new Error(`${parts} ${unary} ${seed}: toulbar2 has ${optimum}`);
          }
        }
        cases.push({
          name: `${parts}×300 ${unary} ${seed}`,
          ours: median(ours.map(({ seconds }) => seconds)),
          // Stopped at the limit, it would have taken longer still.
          given: given.seconds ?? limitSeconds,
          alone: alone.seconds ?? limitSeconds,
        });
      }
    }
  }
  const long = cases.filter(({ given }) => given > 0.3);
  if (long.length === 0) throw new Error('toulbar2 took over 0.3 s on no instance');
  const worst = long.reduce((one, other) =>
    one.given / one.ours < other.given / other.ours ? one : other,
  );
  const told = cases.map(
    ({ name, ours, given, alone }) =>
      `${name}: ${inMs(ours)}, toulbar2 ${inMs(given)} and ${inMs(alone)} without our bound`,
  );
  return [
    {
      id: 'rank.solver',
      value: worst.given / worst.ours,
      unit: '×',
      against: 'toulbar2’s own time for one best, given our optimum plus one as its bound',
      note: `worst of ${long.length} car graphs where it takes over 0.3 s: ${worst.name}; median ${median(long.map(({ given, ours }) => given / ours)).toFixed(1)}\n    ${told.join('\n    ')}`,
    },
  ];
}

const inMs = (seconds: number): string => `${(seconds * 1000).toFixed(0)} ms`;

const instanceOf = (shape: Shape): Instance =>
  generated({ finishes: shape.candidates + 100, ...shape });

/** All pairs: reported, not limited. */
function pairsRows(): Row[] {
  const full = (candidates: number, seed: number): Network =>
    networkOf(instanceOf({ parts: 12, candidates, graph: 'full', unary: 'mid', seed }));
  const proofs = [1, 2, 3].map((seed) => solved(full(120, seed), 30));
  const stopped = [1, 2, 3].map((seed) => solved(full(300, seed), 10));
  const gaps = stopped.map(
    ({ best: [first], bound }) => (100 * (first!.cost - bound)) / first!.cost,
  );
  return [
    {
      id: 'rank.pairs.120',
      value: median(proofs.map(({ seconds }) => seconds)),
      unit: 'CPU s',
      against: 'nothing: reported (aim 5)',
      note: `all pairs 12×120, top 20 ${proofs.map(({ isProved, seconds }) => `${isProved ? 'proved' : 'stopped'} ${seconds.toFixed(1)} s`).join(', ')}`,
    },
    {
      id: 'rank.pairs.300',
      value: median(gaps),
      unit: '% of the cost',
      against: 'nothing: the gap after 10 s, reported',
      note: `all pairs 12×300: ${gaps.map((gap) => gap.toFixed(0)).join(', ')} %`,
    },
  ];
}

/** Most memory that this process holds at any look while one network is solved. */
function memoryRows(): Row[] {
  setFlagsFromString('--expose-gc');
  const collectGarbage = runInNewContext('gc') as () => void;
  const shapes = [
    { parts: 12, graph: 'car' },
    { parts: 16, graph: 'car' },
    { parts: 12, graph: 'full' },
  ] as const;
  return shapes.map(({ parts, graph }): Row => {
    const held = (): number => {
      const { heapUsed, arrayBuffers } = process.memoryUsage();
      return (heapUsed + arrayBuffers) / 1e6;
    };
    const instance = instanceOf({ parts, candidates: 300, graph, unary: 'mid', seed: 1 });
    const network = networkOf(instance);
    collectGarbage();
    let most = 0;
    const start = cpuSeconds();
    const isOver = (): boolean => {
      most = Math.max(most, held());
      return cpuSeconds() - start > 10;
    };
    const { isProved } = best(network, { count: rows, tolerance, isOver });
    const tables = network.edges.reduce((sum, { table }) => sum + table.byteLength, 0) / 1e6;
    return {
      id: `rank.memory.${graph}.${parts}×300`,
      value: most,
      unit: 'MB',
      against: 'nothing: reported',
      note: `heap and tables of the whole process at most, garbage included, ${isProved ? 'until proved' : 'within 10 s'}; pair tables ${tables.toFixed(1)} MB of it, kept in both orientations by the solver`,
    };
  });
}

/** Time by parts and candidates, on car graphs. */
function growthRows(): Row[] {
  return [6, 8, 12, 16].flatMap((parts) =>
    [30, 60, 120, 240, 400].map((candidates): Row => {
      const networks = [1, 2, 3].map((seed) =>
        networkOf(instanceOf({ parts, candidates, graph: 'car', unary: 'mid', seed })),
      );
      const times = networks.map((network) => solved(network, 20));
      const bytes = networks[0]!.edges.reduce((sum, { table }) => sum + table.byteLength, 0);
      return {
        id: `rank.growth.${parts}×${candidates}`,
        value: 1000 * median(times.map(({ seconds }) => seconds)),
        unit: 'CPU ms',
        against: 'nothing: reported',
        note: `car graph, middling wishes, top 20 ${times.every(({ isProved }) => isProved) ? 'proved' : 'not all proved'}; pair tables ${(bytes / 1e6).toFixed(1)} MB`,
      };
    }),
  );
}

/** Six open parts with six candidates each and four rules, evidence of the top five included. */
function everydayRow(): Row {
  const build = everyday();
  const judging = { today };
  const wanted = { ...judging, count: rows, isDifferent: false };
  const judged = judge(build, sight, judging);
  const evidence = (laidOut?: typeof judged): number => {
    const ranking = rankBuild(build, sight, wanted, {}, laidOut);
    if (!ranking.isProved) throw new Error('the everyday case was not proved');
    return ranking.rows.slice(0, 5).reduce((sum, { sheet }) => sum + sheet.evidence.length, 0);
  };
  const start = performance.now();
  evidence(judged);
  const firstTime = (performance.now() - start) / 1000;
  // A builder ranks again and again; engines take some rounds to make code quick.
  for (let round = 0; round < warmUp; round++) evidence(judged);
  const timed = paired(
    () => evidence(judged),
    () => evidence(),
    { samples: 15, sampleMs: 100 },
  );
  return {
    id: 'rank.everyday',
    value: timed.one / frameSeconds,
    unit: 'frames',
    against: 'a frame of 1/60 s on this machine; limit 1',
    note: `6 open parts × 6 candidates with rules, evidence of the top five included: ${spent(timed.one)}, the build laid out as it is while one works; from nothing ${spent(timed.other)}; the very first time ${spent(firstTime)}`,
  };
}

function everyday(): Build {
  const open = ['stripes', 'mirrors', 'seat-inserts', 'seat-piping', 'dashboard', 'wheels'];
  const draw = drawFrom(66);
  const hard = stocked.finishes.filter(({ effect }) => effect === 'solid' || effect === 'metallic');
  const six = (): string[] => {
    const refs = new Set<string>();
    while (refs.size < 6) refs.add(refOf(hard[draw.below(hard.length)]!));
    return [...refs];
  };
  const candidates = new Map(open.map((id) => [id, six()]));
  const parts = stocked.parts.map(({ id, name, covers, absent, ...settled }): Part => {
    const list = candidates.get(id);
    const base = { id, name, covers, absent };
    if (list !== undefined) return { ...base, candidates: list };
    const finish = 'finish' in settled ? settled.finish : settled.candidates[0]!;
    return { ...base, finish, painted: 'painted' in settled && settled.painted };
  });
  const of = (part: string, at: number): string => candidates.get(part)![at]!;
  return {
    ...stocked,
    parts,
    alternatives: [],
    rules: [
      { kind: 'most-new-bottles', count: 3 },
      {
        kind: 'if-then',
        when: { part: 'dashboard', finish: of('dashboard', 0) },
        wants: { part: 'seat-piping', oneOf: [of('seat-piping', 0), of('seat-piping', 1)] },
      },
      {
        kind: 'never-together',
        first: { part: 'mirrors', finish: of('mirrors', 1) },
        second: { part: 'wheels', finish: of('wheels', 1) },
      },
      { kind: 'must-echo', part: 'mirrors' },
    ],
  };
}
