/**
 * A finish put on a part, of one alternative or of all. Derived by hand on a build of two
 * alternatives: grey seats are settled, the body is painted grey, mirrors are open.
 */
import { beforeEach, describe, expect, it } from 'vitest';
import { useSaying } from '../../../src/app/pieces/said.ts';
import { undo, useBench, type Work } from '../../../src/app/store.ts';
import { isOnAll, putOnAll, putOnOne } from '../../../src/app/table/putting.ts';
import { assignmentOf } from '../../../src/build/build.ts';
import { buildFrom } from '../../../src/build/read/document.ts';
import { plainDocument, ref } from '../../build/sample.ts';

const build = buildFrom({
  ...plainDocument(
    ['grey', 'plum'],
    [],
    { seats: 'grey', body: 'grey', mirrors: ['grey', 'plum'] },
    ['body'],
  ),
  alternatives: ['first', 'second'].map((id) => ({
    id,
    name: id,
    choices: { mirrors: ref('grey') },
  })),
});
const plum = build.finishes.find(({ id }) => id === 'plum')!;
const now = () => useBench.getState().work!.build;
const part = (id: string) => now().parts.find((one) => one.id === id)!;
const worn = (id: string) =>
  now().alternatives.map((alternative) => assignmentOf(now(), alternative).get(id));
const said = () => useSaying.getState();

beforeEach(() => {
  useBench.setState({ work: { build, key: 'test' } as Work, racks: [] });
  useBench.temporal.getState().clear();
});

describe('a finish put on a settled part', () => {
  it('of one alternative departs there only, says so, and can be put on all in one press', () => {
    putOnOne(plum, part('seats'), 'first');
    expect(worn('seats')).toEqual([ref('plum'), ref('grey')]);
    expect(part('seats')).toMatchObject({ finish: ref('grey') });
    expect(said().words).toMatch(/of A only\.$/);
    expect(said().way?.name).toBe('On all of them');
    said().way?.go();
    expect(worn('seats')).toEqual([ref('plum'), ref('plum')]);
    expect(part('seats')).toMatchObject({ finish: ref('plum'), painted: false });
    expect(now().alternatives.every(({ choices }) => choices.seats === undefined)).toBe(true);
    expect(said().words).toMatch(/settled so on all\.$/);
    undo();
    expect(worn('seats')).toEqual([ref('plum'), ref('grey')]);
    undo();
    expect(now()).toEqual(build);
  });

  it('that is painted stays painted as it was, and all alternatives depart', () => {
    putOnAll(plum, part('body'));
    expect(part('body')).toMatchObject({ finish: ref('grey'), painted: true });
    expect(worn('body')).toEqual([ref('plum'), ref('plum')]);
    expect(isOnAll(now(), part('body'), plum)).toBe(true);
    undo();
    expect(now()).toEqual(build);
  });
});

describe('a finish put on an open part', () => {
  it('of one alternative is an everyday thing, told without more ado', () => {
    putOnOne(plum, part('mirrors'), 'second');
    expect(worn('mirrors')).toEqual([ref('grey'), ref('plum')]);
    expect(said().words).toMatch(/of B\.$/);
    expect(said().way).toBeUndefined();
    expect(isOnAll(now(), part('mirrors'), plum)).toBe(false);
  });
});
