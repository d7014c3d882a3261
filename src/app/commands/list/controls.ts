/**
 * Buttons in the head and beside the cars that do one thing and are no switch: found by the words
 * that stand on them, done by pressing them, so that nothing has to be told twice.
 */
import type { Command, Kind } from '../command.ts';

/** Where such buttons stand, and what they are about. */
const places: readonly { readonly within: string; readonly kind: Kind }[] = [
  { within: '.head-tools', kind: 'work' },
  { within: '.picture-tools', kind: 'file' },
];

/** Buttons that are there now and can be pressed, save those that other commands stand for. */
export function controlCommands(others: ReadonlySet<string>): Command[] {
  return places.flatMap(({ within, kind }) =>
    [...document.querySelectorAll<HTMLButtonElement>(`${within} button:enabled`)].flatMap(
      (button): Command[] => {
        const name = (button.textContent ?? '').trim();
        if (name === '' || others.has(name) || !button.checkVisibility()) return [];
        return [{ id: `press ${name}`, name, kind, also: button.title, run: () => button.click() }];
      },
    ),
  );
}
