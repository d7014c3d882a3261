/** One line of the command search: a bowl where it is about a finish, its name, what it is about. */
import { memo } from 'react';
import { Bowl } from '../pieces/Spoon.tsx';
import { useBench } from '../store.ts';
import type { Command } from './command.ts';

interface ListedProps {
  readonly id: string;
  readonly command: Command;
  readonly isActive: boolean;
  readonly onPick: () => void;
}

/** An option of the list; keys reach it through the field. */
export const Listed = memo(function Listed({ id, command, isActive, onPick }: ListedProps) {
  const { name, note, kind, keys, finish } = command;
  const light = useBench(({ work }) => work?.build.viewing.light ?? 'D65');
  return (
    <div
      id={id}
      role="option"
      aria-selected={isActive}
      tabIndex={-1}
      className="command"
      // The field keeps the focus, and with it the keys.
      onMouseDown={(event) => event.preventDefault()}
      onClick={onPick}
      onKeyDown={() => {}}
    >
      {finish === undefined ? null : <Bowl finish={finish} light={light} />}
      <span className="command-words">
        <span className="command-name">{name}</span>
        {note === undefined ? null : <span className="command-note">{note}</span>}
      </span>
      <span className="command-kind">{kind}</span>
      {keys === undefined ? null : <kbd>{keys}</kbd>}
    </div>
  );
});
