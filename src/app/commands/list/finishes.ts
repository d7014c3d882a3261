/** Finishes by their name: put one on a part, edit it, add a new one. */
import { type Build, type EmbeddedFinish, letterOf, refOf } from '../../../build/build.ts';
import type { Rack } from '../../../finish/rack/rack.ts';
import { goTo } from '../../area.ts';
import { startEditing } from '../../finish/editing.ts';
import { makeFinish } from '../../finish/fresh.ts';
import { kindOf, lookOf } from '../../pieces/look.ts';
import { finishesToPick } from '../../rack/finishes.ts';
import { seekNear } from '../../rack/seeking.ts';
import { putOnAll, putOnOne } from '../../table/putting.ts';
import { apart, type Command, type Further } from '../command.ts';

/** Everything about finishes of the build and of every rack. */
export function finishCommands(build: Build, racks: readonly Rack[]): Command[] {
  const all = finishesToPick(racks, build.finishes);
  const names = new Map(racks.map(({ id, name }) => [id, name]));
  return [
    ...racks.map(
      (rack): Command => ({
        id: `fresh ${rack.id}`,
        name: racks.length === 1 ? 'New finish' : `New finish in ${apart(rack.name)}`,
        kind: 'finish',
        also: 'add create paint colour own',
        run: () => makeFinish({}, rack.id, () => undefined),
      }),
    ),
    ...all.flatMap((finish) => aboutFinish(build, finish, names.get(finish.rack) ?? '')),
  ];
}

function aboutFinish(build: Build, finish: EmbeddedFinish, rack: string): Command[] {
  const name = apart(finish.name);
  const kind = kindOf(finish, lookOf(finish, build.viewing.light));
  const common = {
    kind: 'finish',
    note: rack === '' ? kind : `${kind}; ${apart(rack)}`,
    finish,
    isDeep: true,
  } as const;
  return [
    {
      ...common,
      id: `put ${refOf(finish)}`,
      name: `${name}: put it on…`,
      also: 'spray wear paint use',
      further: () => placesFor(build, finish),
    },
    {
      ...common,
      id: `edit ${refOf(finish)}`,
      name: `${name}: edit this finish`,
      also: 'change colour gloss coats bottle',
      run: () => startEditing(finish.rack, finish.id),
    },
    {
      ...common,
      id: `near ${refOf(finish)}`,
      name: `${name}: what is near it on the rack`,
      also: 'like similar alike nearest',
      run() {
        seekNear(finish);
        goTo('rack');
      },
    },
  ];
}

/** Where a finish can be put: every part of every alternative, and of all at once. */
function placesFor(build: Build, finish: EmbeddedFinish): Further {
  const one = (part: Build['parts'][number], at: number): Command => {
    const place = `${apart(part.name)} on ${letterOf(at)}`;
    const id = build.alternatives[at]!.id;
    return {
      id: `put ${refOf(finish)} on ${id}/${part.id}`,
      name: place,
      kind: 'part',
      ...(build.alternatives[at] && { note: apart(build.alternatives[at].name) }),
      run: () => putOnOne(finish, part, id),
    };
  };
  const parts = build.parts.filter(({ absent }) => !absent);
  const ids = build.alternatives.map(({ id }) => id);
  const everywhere = parts.map(
    (part): Command => ({
      id: `put ${refOf(finish)} on ${part.id}`,
      name: `${apart(part.name)} on every alternative`,
      kind: 'part',
      also: 'all',
      run: () => putOnAll(finish, part),
    }),
  );
  return {
    title: `Put ${apart(finish.name)} on`,
    commands: [
      ...parts.flatMap((part) => ids.map((_, at) => one(part, at))),
      ...(ids.length < 2 ? [] : everywhere),
    ],
  };
}
