/** Which keys do what? Every key the page knows, as it is told in the command search. */

/** What the key that goes with letters is called here. */
const control = /Mac|iPhone|iPad/.test(navigator.platform) ? '⌘' : 'Ctrl';

export const keyNames = {
  commands: `${control} K`,
  undo: `${control} Z`,
  redo: `${control} Shift Z`,
  save: `${control} S`,
  print: `${control} P`,
} as const;

interface KeyGroup {
  readonly where: string;
  readonly keys: readonly { readonly keys: readonly string[]; readonly does: string }[];
}

export const keyGroups: readonly KeyGroup[] = [
  {
    where: 'Anywhere',
    keys: [
      { keys: [keyNames.commands], does: 'Find anything by its name' },
      { keys: [keyNames.undo], does: 'Undo' },
      { keys: [keyNames.redo, `${control} Y`], does: 'Redo' },
      { keys: [keyNames.save], does: 'Save this build to a file' },
      { keys: [keyNames.print], does: 'Print the comparison' },
      { keys: ['A', 'B', 'C …'], does: 'Held: this alternative in every place' },
      { keys: ['Tab', 'Shift Tab'], does: 'To the next, to the last control' },
      { keys: ['Escape'], does: 'Close what lies over the page; put out every light' },
    ],
  },
  {
    where: 'On a car',
    keys: [
      { keys: ['←', '→', '↑', '↓'], does: 'Turn all cars' },
      { keys: ['+', '−'], does: 'Closer, farther away' },
      { keys: ['Home'], does: 'Back to the front' },
    ],
  },
  {
    where: 'On the name of an alternative, in the part table',
    keys: [{ keys: ['Shift ←', 'Shift →'], does: 'Move it among the others' }],
  },
  {
    where: 'In a row of switches or spoons',
    keys: [{ keys: ['←', '→', '↑', '↓'], does: 'Try the next one at once' }],
  },
  {
    where: 'In this search',
    keys: [
      { keys: ['↑', '↓'], does: 'Move along the list' },
      { keys: ['Home', 'End'], does: 'First, last, while nothing is typed' },
      { keys: ['Enter'], does: 'Do it' },
      { keys: ['Backspace'], does: 'One step back, in an empty field' },
    ],
  },
];
