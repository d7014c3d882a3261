/** Rules by their sentence, and a new one of any kind or about any part. */
import type { Build } from '../../../build/build.ts';
import { namesIn, ruleSentence } from '../../../build/rule.ts';
import { goTo } from '../../area.ts';
import { kinds } from '../../rules/draft.ts';
import { changeRule, fillIn, startRule } from '../../rules/ruling.ts';
import { apart, type Command } from '../command.ts';

/** Everything about rules. */
export function ruleCommands(build: Build): Command[] {
  const names = namesIn(build);
  const fresh = kinds.map(
    ({ kind, says }): Command => ({
      id: `new-rule ${kind}`,
      name: `New rule: ${says.toLowerCase()}`,
      kind: 'rule',
      also: 'add rules',
      isDeep: kind !== 'same',
      run() {
        startRule();
        fillIn((draft) => ({ ...draft, kind }));
      },
    }),
  );
  const about = build.parts
    .filter(({ absent }) => !absent)
    .map(
      ({ id, name }): Command => ({
        id: `rule-about ${id}`,
        name: `${apart(name)}: new rule`,
        kind: 'rule',
        also: 'add rules',
        isDeep: true,
        run: () => startRule({ part: id }),
      }),
    );
  const standing = build.rules.map(
    (rule, at): Command => ({
      id: `rule ${at}`,
      name: ruleSentence(rule, names),
      kind: 'rule',
      also: 'change rules',
      isDeep: true,
      run() {
        goTo('bench');
        changeRule(rule);
      },
    }),
  );
  return [...fresh, ...standing, ...about];
}
