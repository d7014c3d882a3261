/** Parts by their name: their spoons on every alternative, their card, a close look, their colour. */
import {
  assignmentOf,
  type Build,
  finishesByRef,
  isOpen,
  letterOf,
  type Part,
} from '../../../build/build.ts';
import { frame, useViewing } from '../../live/viewing.ts';
import { lay } from '../../overlay/overlay.ts';
import { standingWords } from '../../parts/standing.ts';
import { ask, usePointing } from '../../pointing.ts';
import { apart, type Command } from '../command.ts';
import { goToHeading, openSpoons } from '../go.ts';

/** Everything about parts. */
export function partCommands(build: Build): Command[] {
  const finishes = finishesByRef(build);
  const worn = build.alternatives.map((alternative) => assignmentOf(build, alternative));
  const spoons = build.alternatives.flatMap((alternative, at) =>
    build.parts
      .filter(({ absent }) => !absent)
      .map((part): Command => {
        const finish = finishes.get(worn[at]?.get(part.id) ?? '');
        return {
          id: `spoons ${alternative.id}/${part.id}`,
          name: `${apart(part.name)} on ${letterOf(at)}: try spoons`,
          kind: 'spoons',
          also: 'choose change paint colour',
          ...(finish === undefined ? {} : { note: `wears ${apart(finish.name)}`, finish }),
          isDeep: true,
          run: () => openSpoons(alternative.id, part.id),
        };
      }),
  );
  return [...spoons, ...build.parts.flatMap(aboutPart)];
}

function aboutPart(part: Part): Command[] {
  const { id, covers } = part;
  const name = apart(part.name);
  const card: Command = {
    id: `part ${id}`,
    name: `${name}: part`,
    kind: 'part',
    note: standingWords(part),
    also: `name rename candidates group cover left out hide ${isOpen(part) ? 'settle' : 'reopen stripped'}`,
    isDeep: true,
    run: () => lay({ kind: 'part', part: id }),
  };
  if (part.absent) return [card];
  const elsewhere: Command = {
    id: `elsewhere ${id}`,
    name: `Where else does the colour of ${name} appear?`,
    kind: 'part',
    also: 'repeat echo',
    isDeep: true,
    run() {
      if (usePointing.getState().asked !== id) ask(id);
      goToHeading('parts-title');
    },
  };
  const closely: Command = {
    id: `closely ${id}`,
    name: `Look closely at ${name}`,
    kind: 'view',
    also: 'zoom closer frame',
    isDeep: true,
    run: () => frame(covers),
  };
  return useViewing.getState().liveness === 'live' ? [card, elsewhere, closely] : [card, elsewhere];
}
