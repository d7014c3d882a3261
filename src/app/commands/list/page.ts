/** The page itself: its areas and sections, undo, files, pictures, paper, keys. */
import { goTo, useArea } from '../../area.ts';
import { askForFile } from '../../opening/ask.ts';
import { saveWork } from '../../opening/save.ts';
import { lay } from '../../overlay/overlay.ts';
import { printComparison } from '../../print/listen.ts';
import { redo, undo, useBench } from '../../store.ts';
import type { Command } from '../command.ts';
import { goToHeading, goToStage } from '../go.ts';
import { keyNames } from '../keys.ts';

/** Everything about the page and the build as a whole. */
export function pageCommands(): Command[] {
  const { pastStates, futureStates } = useBench.temporal.getState();
  const steps = [
    ...(pastStates.length === 0
      ? []
      : [{ id: 'undo', name: 'Undo', keys: keyNames.undo, also: 'take back', run: undo }]),
    ...(futureStates.length === 0
      ? []
      : [{ id: 'redo', name: 'Redo', keys: keyNames.redo, also: 'again', run: redo }]),
  ];
  const here = useArea.getState().area;
  return [
    ...steps.map((step): Command => ({ ...step, kind: 'work' })),
    ...areas
      .filter(({ id }) => id !== here)
      .map(({ id, name, also }) => page(id, name, also, () => goTo(id))),
    page('stage', 'Go to the cars', 'top stage', goToStage),
    page('parts', 'Go to the parts', 'table', () => goToHeading('parts-title')),
    page('rules', 'Go to the rules', '', () => goToHeading('rules-title')),
    page('sheets', 'Go to the score sheets', 'reasons why numbers', () =>
      goToHeading('sheets-title'),
    ),
    {
      ...file('save', 'Save this build to a file', 'download json', saveWork),
      keys: keyNames.save,
    },
    file('open', 'Open a file: a build or a rack', 'import load bring json csv', askForFile),
    file(
      'ask',
      'Ask viewers: link, code, picture and text',
      'share send post opinions qr answers',
      () => lay({ kind: 'ask' }),
    ),
    file('bring', 'Bring finishes from files or a paste', 'import rack csv spreadsheet', () =>
      lay({ kind: 'bring' }),
    ),
    {
      ...file('print', 'Print the comparison', 'paper pdf', printComparison),
      keys: keyNames.print,
    },
    build(
      'build',
      'About this build: name, scale, distance, date',
      'rename story wanted model',
      () => lay({ kind: 'build' }),
    ),
    build('new', 'New build', 'start kit blank', () => lay({ kind: 'new' })),
    build('all-parts', 'All parts: settle, open or leave out many at once', 'mark list group', () =>
      lay({ kind: 'parts' }),
    ),
    build('builds', 'All builds', 'open other recent kept', () => lay({ kind: 'builds' })),
  ];
}

/** What lies beneath the cars. */
const areas = [
  { id: 'bench', name: 'Back to the bench', also: 'table area' },
  { id: 'rack', name: 'Go to the rack', also: 'finishes paints spoons drawer area shelf' },
  {
    id: 'ranking',
    name: 'Rank every combination, best first',
    also: 'ranking best order search find area all possible',
  },
] as const;

const page = (id: string, name: string, also: string, run: () => void): Command => ({
  id,
  name,
  kind: 'page',
  also,
  run,
});
const file = (id: string, name: string, also: string, run: () => void): Command => ({
  ...page(id, name, also, run),
  kind: 'file',
});
const build = (id: string, name: string, also: string, run: () => void): Command => ({
  ...page(id, name, also, run),
  kind: 'build',
});
