/**
 * Buttons beside the cars that do one thing and are no switch: found by the words that stand on
 * them, done by pressing them, so that nothing has to be told twice.
 */
import type { Command } from '../command.ts';

/** Buttons that are there now and can be pressed. */
export function controlCommands(): Command[] {
  // Those marked as listed are commands of their own.
  const buttons = document.querySelectorAll<HTMLButtonElement>(
    '.picture-tools > button:enabled:not([data-listed])',
  );
  return [...buttons].flatMap((button): Command[] => {
    const name = (button.textContent ?? '').trim();
    if (name === '') return [];
    return [
      {
        id: `press ${name}`,
        name,
        kind: 'file',
        also: `${button.title} save copy image`,
        run: () => button.click(),
      },
    ];
  });
}
