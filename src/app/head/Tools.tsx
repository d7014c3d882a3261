/** What can be done with builds: in a row as far as there is room, the rest behind one button. */
import { useId, useRef } from 'react';
import { askForFile } from '../opening/ask.ts';
import { saveWork } from '../opening/save.ts';
import { lay } from '../overlay/overlay.ts';
import { History } from './History.tsx';

interface Tool {
  /** In the row on wide windows, on middling ones too, or never. */
  readonly shown: 'wide' | 'middling' | 'never';
  readonly name: string;
  readonly title: string;
  readonly act: () => void;
}

const find = (): void => lay({ kind: 'commands' });
const tools: readonly Tool[] = [
  {
    shown: 'middling',
    name: 'Builds…',
    title: 'Every build this browser keeps, and the demo',
    act: () => lay({ kind: 'builds' }),
  },
  { shown: 'wide', name: 'New…', title: 'A new build', act: () => lay({ kind: 'new' }) },
  {
    shown: 'wide',
    name: 'Save',
    title: 'Save this build to a file (Ctrl or ⌘ and S)',
    act: () => void saveWork(),
  },
  {
    shown: 'wide',
    name: 'Ask viewers…',
    title: 'A link, a code to scan, a picture, a text',
    act: () => lay({ kind: 'ask' }),
  },
  { shown: 'never', name: 'Open a file…', title: 'A build, or a rack', act: askForFile },
  { shown: 'middling', name: 'Find anything…', title: '', act: find },
];

/** Undo and redo, then everything else. */
export function Tools() {
  return (
    <div className="head-tools">
      <History />
      <span className="head-row">
        {tools
          .filter(({ shown, act }) => shown !== 'never' && act !== find)
          .map(({ shown, name, title, act }) => (
            <button
              key={name}
              type="button"
              className={`button head-${shown}`}
              title={title}
              onClick={act}
            >
              {name}
            </button>
          ))}
        <button type="button" className="button head-middling head-find" onClick={find}>
          Find anything <kbd>Ctrl K</kbd>
        </button>
      </span>
      <More />
    </div>
  );
}

/** What has no room in the row, behind one button. */
function More() {
  const id = useId();
  const list = useRef<HTMLDivElement>(null);
  return (
    <span className="head-more">
      <button
        type="button"
        className="button"
        popoverTarget={id}
        onClick={({ currentTarget }) => {
          const { bottom } = currentTarget.getBoundingClientRect();
          list.current?.style.setProperty('--from', `${bottom}px`);
        }}
      >
        More
      </button>
      <div ref={list} id={id} popover="auto" className="more">
        {tools.map(({ shown, name, title, act }) => (
          <button
            key={name}
            type="button"
            className={`more-line more-${shown}`}
            title={title}
            onClick={() => {
              list.current?.hidePopover();
              act();
            }}
          >
            {name}
          </button>
        ))}
      </div>
    </span>
  );
}
