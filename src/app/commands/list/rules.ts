/** Rules by their sentence, and a new one of any kind. */
import type { Build } from '../../../build/build.ts';
import { namesIn, ruleSentence } from '../../../build/rule.ts';
import type { Command } from '../command.ts';
import { goToHeading } from '../go.ts';

/** Everything about rules. */
export function ruleCommands(build: Build): Command[] {
  const names = namesIn(build);
  return build.rules.map(
    (rule, at): Command => ({
      id: `rule ${at}`,
      name: ruleSentence(rule, names),
      kind: 'rule',
      also: 'rules',
      isDeep: true,
      run: () => goToHeading('rules-title'),
    }),
  );
}
