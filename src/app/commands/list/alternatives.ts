/** Alternatives by their letter and name: go to one, change, add, copy, delete, leave it off. */
import { type Build, letterOf } from '../../../build/build.ts';
import {
  addAlternative,
  copyAlternative,
  removeAlternative,
} from '../../../build/edit/alternative.ts';
import { setOnStage } from '../../onStage.ts';
import { lay } from '../../overlay/overlay.ts';
import { sayDone } from '../../pieces/said.ts';
import { edit, endStep, useBench } from '../../store.ts';
import { apart, type Command } from '../command.ts';
import { goToCar } from '../go.ts';

/** Changes the build by one step that adds an alternative, and opens the new one. */
function adding(change: (build: Build) => Build): void {
  const before = new Set(useBench.getState().work?.build.alternatives.map(({ id }) => id));
  endStep();
  edit(change);
  endStep();
  const after = useBench.getState().work?.build.alternatives ?? [];
  const fresh = after.find(({ id }) => !before.has(id));
  if (fresh !== undefined) lay({ kind: 'alternative', alternative: fresh.id });
}

/** Everything about alternatives. */
export function alternativeCommands(build: Build): Command[] {
  const { alternatives } = build;
  const fresh: Command = {
    id: 'add-alternative',
    name: 'Add an alternative',
    kind: 'alternative',
    also: 'new scheme create',
    run: () => adding((now) => addAlternative(now, undefined, alternatives.at(-1)?.id)),
  };
  return [
    fresh,
    ...alternatives.flatMap(({ id, name }, at) => about(build, id, name, letterOf(at))),
  ];
}

function about(build: Build, id: string, plain: string, letter: string): Command[] {
  const name = apart(plain);
  const common = { kind: 'alternative', note: name } as const;
  const others = build.alternatives.filter((one) => one.id !== id);
  const pairs = build.alternatives.length < 3 ? [] : build.alternatives;
  return [
    {
      ...common,
      id: `alternative ${id}`,
      name: `${letter}: name, note and place`,
      also: 'rename reorder move alternative',
      run: () => lay({ kind: 'alternative', alternative: id }),
    },
    {
      ...common,
      id: `go ${id}`,
      name: `Go to car ${letter}`,
      isDeep: true,
      run: () => goToCar(id),
    },
    {
      ...common,
      id: `copy ${id}`,
      name: `Copy ${letter}`,
      also: 'duplicate alternative',
      isDeep: true,
      run: () => adding((now) => copyAlternative(now, id)),
    },
    {
      ...common,
      id: `delete ${id}`,
      name: `Delete ${letter}`,
      also: 'remove alternative throw away',
      isDeep: true,
      run() {
        endStep();
        edit((now) => removeAlternative(now, id));
        endStep();
        sayDone(`${letter}, ${name}, is deleted.`);
      },
    },
    ...pairs
      .filter(
        (other) =>
          build.alternatives.indexOf(other) > build.alternatives.findIndex((one) => one.id === id),
      )
      .map((other): Command => {
        const otherLetter = letterOf(build.alternatives.indexOf(other));
        return {
          id: `pair ${id} ${other.id}`,
          name: `Compare ${letter} with ${otherLetter} only`,
          kind: 'alternative',
          also: 'two beside leave off stage',
          isDeep: true,
          run() {
            for (const one of build.alternatives) {
              setOnStage(one.id, one.id === id || one.id === other.id);
            }
          },
        };
      }),
    ...(others.length > 1 && id === build.alternatives[0]?.id
      ? [
          {
            id: 'compare-all',
            name: 'Compare all alternatives',
            kind: 'alternative',
            also: 'put on stage every',
            isDeep: true,
            run() {
              for (const one of build.alternatives) setOnStage(one.id, true);
            },
          } as const,
        ]
      : []),
  ];
}
