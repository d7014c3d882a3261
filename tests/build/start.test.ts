/** A new build begins complete: every painted part of the car covered, nothing else. */
import { describe, expect, it } from 'vitest';
import { isOpen } from '../../src/build/build.ts';
import { checkAgainstCar, uncoveredParts } from '../../src/build/coverage.ts';
import { undecidedRef } from '../../src/build/edit/part.ts';
import { parseBuild, textOf } from '../../src/build/file.ts';
import { blankBuild, sameShape, startingBuild } from '../../src/build/start.ts';
import type { Group, Role, SightTable } from '../../src/car/table.ts';
import { InputError } from '../../src/ground/problem.ts';

const part = (id: string, role: Role, group: Group = 'trim') => ({
  id,
  name: id.replaceAll('-', ' '),
  role,
  group,
  areaMm2: {},
  thicknessMm: null,
});
const features = ['body', 'stripe-left', 'stripe-right', 'mirrors', 'engine-cover'];
const cabin = ['seat-bolsters', 'seat-inserts', 'seat-piping', 'belts', 'dashboard'];
const wheels = ['wheel-spokes', 'calipers', 'caliper-lettering'];
const trim = ['sills', 'splitter', 'grille', 'door-handles', 'exhausts', 'badge-rims', 'wipers'];
const sightOf = (parts: SightTable['parts']): SightTable => ({
  format: 'testspoon-sight',
  version: 1,
  car: 'roadster',
  name: 'Roadster',
  lengthMm: 4000,
  meshSha256: '00',
  looks: [],
  parts,
  borders: [],
});
const roadster = sightOf([
  ...features.map((id) => part(id, 'feature', 'skin')),
  ...cabin.map((id) => part(id, 'feature', 'cabin')),
  ...wheels.map((id) => part(id, 'feature', 'wheels')),
  part('badges', 'feature'),
  ...trim.map((id) => part(id, 'ground')),
  ...['tub', 'carpet', 'steering-wheel'].map((id) => part(id, 'ground', 'cabin')),
  part('wheel-rims', 'ground', 'wheels'),
  part('tyres', 'given', 'wheels'),
  part('panel-gaps', 'gap'),
]);
const begun = startingBuild({ car: 'roadster', name: 'Sunday Café racer', scale: 24 }, roadster);

describe('a new build', () => {
  it('covers every painted part of its car once and leaves tyres and gaps alone', () => {
    expect(uncoveredParts(begun, roadster)).toEqual([]);
    expect(checkAgainstCar(begun, roadster)).toEqual([]);
    const covered = begun.parts.flatMap(({ covers }) => covers);
    expect(new Set(covered).size).toBe(covered.length);
    expect(covered).not.toContain('tyres');
  });

  it('groups parts as they are sprayed', () => {
    const stripes = begun.parts.find(({ id }) => id === 'stripes');
    expect(stripes?.covers).toEqual(['stripe-left', 'stripe-right']);
  });

  it('asks one question with three answers', () => {
    const open = begun.parts.filter(isOpen);
    expect(open.map(({ id }) => id)).toEqual(['stripes']);
    expect(begun.alternatives).toHaveLength(3);
    expect(new Set(begun.alternatives.map(({ choices }) => choices.stripes)).size).toBe(3);
  });

  it('is named by the builder and can be saved and opened', () => {
    expect([begun.id, begun.name]).toEqual(['sunday-cafe-racer', 'Sunday Café racer']);
    expect(parseBuild(textOf(begun))).toEqual(begun);
  });

  it('fits a car with parts nobody foresaw, and without stripes', () => {
    const van = sightOf([
      part('body', 'feature', 'skin'),
      part('roof-rack', 'feature', 'skin'),
      part('seats', 'ground', 'cabin'),
      part('seat-bolsters', 'feature', 'cabin'),
    ]);
    const build = startingBuild({ car: 'roadster', name: '箱', scale: 43 }, van);
    expect(uncoveredParts(build, van)).toEqual([]);
    expect(build.parts.filter(isOpen).map(({ id }) => id)).toEqual(['body']);
    expect(build.id).toBe('build');
  });

  it.each([
    ['an empty name', { name: '', scale: 24 }],
    ['a name of a megabyte', { name: 'x'.repeat(1_000_000), scale: 24 }],
    ['a name that turns the text around', { name: 'red\u202ecar', scale: 24 }],
    ['a scale of nothing', { name: 'Car', scale: 0 }],
    ['a scale that is no number', { name: 'Car', scale: Number.NaN }],
  ])('refuses %s', (_what, wish) => {
    expect(() => startingBuild({ car: 'roadster', ...wish }, roadster)).toThrow(InputError);
  });
});

describe('a blank build', () => {
  const blank = blankBuild({ car: 'roadster', name: 'Kit on the bench', scale: 43 }, roadster);

  it('covers every painted part once, with nothing open and nothing painted', () => {
    expect(uncoveredParts(blank, roadster)).toEqual([]);
    expect(checkAgainstCar(blank, roadster)).toEqual([]);
    expect(blank.parts.filter((part) => isOpen(part) || part.painted)).toEqual([]);
  });

  it('shows what a builder chooses in primer and what kits give as it comes', () => {
    const wears = (id: string) => blank.parts.find((part) => part.id === id);
    for (const id of ['body', 'stripes', 'mirrors', 'seats']) {
      expect(wears(id), id).toMatchObject({ finish: undecidedRef });
    }
    expect(wears('sills-and-trim')).toMatchObject({ finish: 'first-shelf/satin-black' });
  });

  it('has one car to look at, and comes back from its text', () => {
    expect(blank.alternatives.map(({ choices }) => choices)).toEqual([{}]);
    expect(parseBuild(textOf(blank))).toEqual(blank);
  });

  it('refuses a scale of nothing', () => {
    const wish = { car: 'roadster', name: 'Kit', scale: 0 };
    expect(() => blankBuild(wish, roadster)).toThrow(InputError);
  });
});

describe('a build in the shape of another', () => {
  const like = {
    ...begun,
    story: 'Someone else’s.',
    wantedBy: '2031-05-24',
    parts: begun.parts.map((part) => (isOpen(part) ? part : { ...part, painted: true })),
  };
  const shape = sameShape(like, { name: 'Mine', scale: 12 });

  it('takes parts, candidates, rules and finishes, but nothing that is painted or told', () => {
    expect([shape.name, shape.id, shape.scale]).toEqual(['Mine', 'mine', 12]);
    expect(shape.parts).toEqual(begun.parts);
    expect([shape.finishes, shape.rules]).toEqual([like.finishes, like.rules]);
    expect('story' in shape || 'wantedBy' in shape).toBe(false);
  });

  it('has one alternative, in the first candidate of what is open', () => {
    expect(shape.alternatives.map(({ choices }) => choices)).toEqual([
      { stripes: 'first-shelf/chalk' },
    ]);
  });
});
