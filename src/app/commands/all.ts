/** Everything that can be done and gone to, from the stores as they are now. */
import { useBench } from '../store.ts';
import type { Command } from './command.ts';
import { alternativeCommands } from './list/alternatives.ts';
import { controlCommands } from './list/controls.ts';
import { finishCommands } from './list/finishes.ts';
import { pageCommands } from './list/page.ts';
import { partCommands } from './list/parts.ts';
import { ruleCommands } from './list/rules.ts';
import { stageCommands } from './list/stage.ts';

/** Every command there is now, in the order in which they are listed. */
export function allCommands(): readonly Command[] {
  const { work, racks = [] } = useBench.getState();
  if (work === undefined) return [];
  const { build, car } = work;
  return [
    ...pageCommands(),
    ...controlCommands(),
    ...alternativeCommands(build),
    ...stageCommands(build, car),
    ...partCommands(build),
    ...finishCommands(build, racks),
    ...ruleCommands(build),
  ];
}
