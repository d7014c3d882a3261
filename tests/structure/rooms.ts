/**
 * Which room may import what: the direction table of DEVELOPERS.md, and the faults found when
 * modules are held against it. Reading a file, you may stop at its own floor.
 */
import { builtinModules } from 'node:module';
import type { Module } from './module.ts';

interface Room {
  /** Rooms of `src` it may import; its own is always allowed. */
  readonly rooms: readonly string[];
  /** Packages it may import; `node` stands for all of Node's own. */
  readonly packages: readonly string[];
  /** May read the stored cars and racks. */
  readonly hasShelf?: true;
}

export const pureRooms = [
  'ground',
  'colour',
  'finish',
  'car',
  'build',
  'score',
  'opinion',
  'ranking',
] as const;

export const rooms: Readonly<Record<string, Room>> = {
  ground: { rooms: [], packages: [] },
  colour: { rooms: ['ground'], packages: ['culori', 'color-name-list'] },
  finish: { rooms: ['ground', 'colour'], packages: ['valibot', 'papaparse'] },
  car: { rooms: ['ground'], packages: ['valibot', '@gltf-transform/core'] },
  build: { rooms: ['ground', 'finish', 'car'], packages: ['valibot'] },
  score: { rooms: ['ground', 'colour', 'finish', 'car', 'build'], packages: [] },
  opinion: { rooms: ['ground', 'colour', 'finish', 'car', 'build'], packages: ['fflate'] },
  ranking: { rooms: ['ground', 'colour', 'finish', 'car', 'build', 'score'], packages: [] },
  stage: {
    rooms: ['ground', 'colour', 'finish', 'car', 'build'],
    packages: ['react', 'three', '@react-three/fiber'],
  },
  app: {
    rooms: [...pureRooms, 'stage'],
    packages: [
      'preact',
      'react',
      'react-dom',
      'zustand',
      'zundo',
      'idb',
      '@tanstack/react-virtual',
      'uqr',
    ],
    hasShelf: true,
  },
  server: { rooms: [], packages: ['node', 'vite', 'sirv'] },
  cli: {
    rooms: pureRooms,
    packages: ['node', 'commander', 'string-width', 'wrap-ansi'],
    hasShelf: true,
  },
  models: {
    rooms: ['ground', 'colour', 'car'],
    packages: [
      'node',
      '@gltf-transform/core',
      '@gltf-transform/extensions',
      '@gltf-transform/functions',
      'culori',
    ],
    hasShelf: true,
  },
};

/** Files that only a build tool runs stand outside the table. */
export const isToolSetting = (path: string): boolean =>
  /(^|\/)vite\.config\.ts$/.test(path) || path === 'src/app/schemas.ts';

const roomOf = (path: string): string => {
  const [first, second] = path.split('/');
  return first === 'src' ? (second ?? '') : (first ?? '');
};

const packageOf = (target: string): string => {
  if (target.startsWith('node:') || builtinModules.includes(target)) return 'node';
  const steps = target.split('/');
  return target.startsWith('@') ? steps.slice(0, 2).join('/') : (steps[0] ?? '');
};

/** Every import that climbs where it may not, as `file imports target: why`. */
export function directionFaults(modules: readonly Module[]): string[] {
  return modules
    .filter(({ path }) => !path.startsWith('tests/') && !isToolSetting(path))
    .flatMap((module) => module.imports.flatMap((target) => faultOf(module.path, target)));
}

function faultOf(path: string, target: string): string[] {
  const from = roomOf(path);
  const room = rooms[from];
  if (target === 'package.json' && from === 'cli') return [];
  if (room === undefined) return [`${path}: ${from} is no room of the table`];
  const isOurs = /^(\.\.\/|src\/|models\/|palettes\/|tests\/)/.test(target);
  if (!isOurs) {
    const name = packageOf(target);
    return room.packages.includes(name) ? [] : [`${path} imports ${target}: not for ${from}`];
  }
  const to = roomOf(target);
  const isAllowed =
    to === from ||
    room.rooms.includes(to) ||
    (room.hasShelf === true && (to === 'models' || to === 'palettes') && !target.endsWith('.ts'));
  return isAllowed ? [] : [`${path} imports ${target}: ${from} may not know ${to}`];
}

/** Every import cycle, each once, as `a → b → a`. Type-only imports count. */
export function cyclesAmong(modules: readonly Module[]): string[] {
  const byPath = new Map(modules.map((module) => [module.path, module]));
  const done = new Set<string>();
  const cycles: string[] = [];
  const walk = (path: string, trail: readonly string[]): void => {
    const at = trail.indexOf(path);
    if (at >= 0) {
      cycles.push([...trail.slice(at), path].join(' → '));
      return;
    }
    if (done.has(path)) return;
    for (const target of byPath.get(path)?.imports ?? []) walk(target, [...trail, path]);
    done.add(path);
  };
  for (const { path } of modules) walk(path, []);
  return cycles;
}

/** Pure rooms that reach for clock, chance, DOM, files or network. */
export function purityFaults(modules: readonly Module[]): string[] {
  return modules
    .filter(({ path }) => pureRooms.some((room) => path.startsWith(`src/${room}/`)))
    .flatMap(({ path, impurities }) => impurities.map((name) => `${path} touches ${name}`));
}
