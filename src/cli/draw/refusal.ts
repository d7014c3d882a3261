/**
 * Bad input, told so that it can be mended: the file, then for each fault its place, what was
 * found, what was expected, and how to mend it.
 */
import type { InputError } from '../../ground/problem.ts';
import { harmless, type Screen, styled } from './screen.ts';
import { hanging } from './table.ts';

const indent = 12;

/** The refusal as lines for standard error. */
export function refusalLines(screen: Screen, { problems, source }: InputError): string[] {
  const count = problems.length === 1 ? 'one problem' : `${problems.length} problems`;
  const what =
    source === undefined ? 'The input' : harmless(source).replace(/^the (?=link$|demo$)/, 'The ');
  return [
    styled(screen, 'bold', `${what} cannot be used: ${count}.`),
    ...problems.flatMap(({ place, found, expected, mend }) => [
      '',
      ...(place === '' ? [] : [`  ${harmless(place)}`]),
      ...hanging(screen, '  found', indent, harmless(found)),
      ...hanging(screen, '  expected', indent, harmless(expected)),
      ...hanging(screen, '  to mend', indent, harmless(mend)),
    ]),
  ];
}
