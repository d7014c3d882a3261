/**
 * Everything that can be done or gone to, by its name: a field and a list beneath it, by keys,
 * mouse or finger. Some things ask what with; their answers are searched in the same way.
 */
import { useEffect, useMemo, useRef, useState } from 'react';
import { stopEditing } from '../finish/editing.ts';
import { clear } from '../overlay/overlay.ts';
import { Dialog } from '../pieces/Dialog.tsx';
import { stopChoosing, useChoosing } from '../table/choosing.ts';
import { allCommands } from './all.ts';
import type { Command, Further } from './command.ts';
import { Keys } from './Keys.tsx';
import { Listed } from './Listed.tsx';
import { buildCommands } from './list/builds.ts';
import { ranked } from './rank.ts';
import { recentCommands, remember } from './recent.ts';
import './commands.css';

/** More than these are narrowed by another word rather than scrolled through. */
const mostShown = 60;
const listId = 'commands-list';
const optionId = (at: number): string => `commands-option-${at}`;

interface CommandsProps {
  readonly isKeys?: boolean;
}

/** The dialog. */
export function Commands({ isKeys = false }: CommandsProps) {
  const [showsKeys, setKeys] = useState(isKeys);
  // After the dialog has opened, which gives the focus to its first button.
  useEffect(() => {
    if (!showsKeys) document.querySelector<HTMLElement>('.commands-field')?.focus();
  }, [showsKeys]);
  return (
    <Dialog
      title={showsKeys ? 'Keys' : 'Find anything by its name'}
      className="commands"
      closing="Close"
      onClose={clear}
      tools={
        <button type="button" className="button" onClick={() => setKeys(!showsKeys)}>
          {showsKeys ? 'Search' : 'Keys'}
        </button>
      }
    >
      {showsKeys ? <Keys /> : <Search />}
    </Dialog>
  );
}

/** Does it once the dialog has gone, so that it meets the page as the builder does. */
function carryOut(command: Command & { run: () => void }): void {
  remember(command.id);
  clear();
  if (useChoosing.getState().cell !== undefined) stopChoosing();
  stopEditing();
  setTimeout(command.run);
}

function Search() {
  const [sought, setSought] = useState('');
  const [further, setFurther] = useState<Further>();
  const [at, setAt] = useState(0);
  const field = useRef<HTMLInputElement>(null);
  const now = useMemo(allCommands, []);
  const [builds, setBuilds] = useState<readonly Command[]>([]);
  useEffect(() => {
    // They lie in the browser's store, which takes its time.
    void buildCommands().then(setBuilds);
  }, []);
  const all = useMemo(() => [...now, ...builds], [now, builds]);
  const [recent] = useState(recentCommands);
  const found = useMemo(
    () => ranked(further?.commands ?? all, sought, further === undefined ? recent : []),
    [all, further, sought, recent],
  );
  const shown = found.commands.slice(0, mostShown);
  const active = Math.min(at, shown.length - 1);

  useEffect(() => {
    document.getElementById(optionId(active))?.scrollIntoView({ block: 'nearest' });
  }, [active]);

  const look = (words: string): void => {
    setSought(words);
    setAt(0);
  };
  const go = (to: Further | undefined): void => {
    setFurther(to);
    look('');
    field.current?.focus();
  };
  const pick = (command: Command | undefined): void => {
    if (command === undefined) return;
    if ('further' in command) go(command.further());
    else carryOut(command);
  };
  const moves: Readonly<Record<string, number>> = {
    ArrowDown: (active + 1) % Math.max(1, shown.length),
    ArrowUp: (active - 1 + shown.length) % Math.max(1, shown.length),
    PageDown: Math.min(shown.length - 1, active + 8),
    PageUp: Math.max(0, active - 8),
    // With words in the field these move within them.
    ...(sought === '' ? { Home: 0, End: shown.length - 1 } : {}),
  };
  return (
    <>
      {further === undefined ? null : (
        <p className="commands-further">
          <button type="button" className="button" onClick={() => go(undefined)}>
            Back
          </button>
          <strong>{further.title}…</strong>
        </p>
      )}
      <input
        ref={field}
        className="entry commands-field"
        type="text"
        role="combobox"
        aria-label={further === undefined ? 'What to do or go to' : `${further.title}…`}
        aria-expanded="true"
        aria-controls={listId}
        aria-autocomplete="list"
        aria-activedescendant={shown.length === 0 ? undefined : optionId(active)}
        dir="auto"
        autoComplete="off"
        spellCheck={false}
        placeholder={further === undefined ? 'mirrors b, marigold, warm lamp, print…' : ''}
        value={sought}
        onChange={({ currentTarget }) => look(currentTarget.value)}
        onKeyDown={(event) => {
          const { key } = event;
          if (event.nativeEvent.isComposing) return;
          if (key === 'Enter') pick(shown[active]);
          else if (key === 'Backspace' && sought === '' && further !== undefined) go(undefined);
          else if (moves[key] !== undefined) setAt(moves[key]);
          else return;
          event.preventDefault();
        }}
      />
      <p className="commands-told" role="status">
        {told(found, sought)}
      </p>
      <div
        className="commands-list"
        id={listId}
        role="listbox"
        tabIndex={-1}
        aria-label={further === undefined ? 'What can be done' : `${further.title}…`}
      >
        {shown.map((command, place) => (
          <Listed
            key={command.id}
            id={optionId(place)}
            command={command}
            isActive={place === active}
            onPick={() => pick(command)}
          />
        ))}
      </div>
      {found.commands.length > mostShown ? (
        <p className="quiet commands-more">
          {found.commands.length - mostShown} more; another word narrows them.
        </p>
      ) : null}
    </>
  );
}

/** What to know of what was found. */
function told({ commands, unknown, isWhole }: ReturnType<typeof ranked>, sought: string): string {
  const kinds =
    'parts, finishes, alternatives, rules, builds, views, lights, distances, files, undo and print';
  if (commands.length === 0)
    return `Nothing here is called “${sought.trim()}”. There are ${kinds}.`;
  if (unknown.length > 0) return `Nothing here is called “${unknown.join(' ')}”; without it:`;
  if (!isWhole) return 'Nothing has all of these words; these come nearest:';
  if (sought.trim() === '') return '';
  return commands.length === 1 ? 'One found.' : `${commands.length} found.`;
}
