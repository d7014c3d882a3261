/** What can be done with builds: all in a row where there is room, behind one button on a phone. */
import { useId, useRef } from 'react';
import { askForFile } from '../opening/ask.ts';
import { saveWork } from '../opening/save.ts';
import { lay } from '../overlay/overlay.ts';
import { History } from './History.tsx';

interface Tool {
  readonly name: string;
  readonly title: string;
  readonly act: () => void;
}

const tools: readonly Tool[] = [
  {
    name: 'Builds…',
    title: 'Every build this browser keeps, and the demo',
    act: () => lay({ kind: 'builds' }),
  },
  { name: 'New…', title: 'A new build', act: () => lay({ kind: 'new' }) },
  {
    name: 'Save',
    title: 'Save this build to a file (Ctrl or ⌘ and S)',
    act: () => void saveWork(),
  },
];
const openFile: Tool = { name: 'Open a file…', title: 'A build, or a rack', act: askForFile };
const find = (): void => lay({ kind: 'commands' });

/** Undo and redo, then everything else. */
export function Tools() {
  return (
    <div className="head-tools">
      <History />
      <span className="head-row">
        {tools.map(({ name, title, act }) => (
          <button key={name} type="button" className="button" title={title} onClick={act}>
            {name}
          </button>
        ))}
        <button type="button" className="button head-find" onClick={find}>
          Find anything <kbd>Ctrl K</kbd>
        </button>
      </span>
      <More />
    </div>
  );
}

/** The same behind one button. */
function More() {
  const id = useId();
  const list = useRef<HTMLDivElement>(null);
  const all: readonly Tool[] = [
    ...tools,
    openFile,
    { name: 'Find anything…', title: '', act: find },
  ];
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
        {all.map(({ name, title, act }) => (
          <button
            key={name}
            type="button"
            className="more-line"
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
