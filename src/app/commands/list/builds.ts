/** Every build this browser keeps, by its name, and the demo. */
import { openBuild } from '../../builds/act.ts';
import { listBuilds } from '../../keeping/store/builds.ts';
import { isNewer } from '../../keeping/store/card.ts';
import { openWhenRead } from '../../opening/incoming.ts';
import { demoWork } from '../../opening/start.ts';
import { useBench } from '../../store.ts';
import { apart, type Command } from '../command.ts';

const demo: Command = {
  id: 'demo',
  name: 'Open the demo again',
  kind: 'build',
  also: 'start example',
  run: () => void openWhenRead('The demo', demoWork()),
};

/** Builds that can be opened; the demo alone where the browser keeps none. */
export async function buildCommands(): Promise<readonly Command[]> {
  const openKey = useBench.getState().work?.key;
  const listed = await listBuilds().catch(() => []);
  const kept = listed
    .filter(({ card }) => card.key !== openKey && !isNewer(card))
    .map(
      ({ card }): Command => ({
        id: `build ${card.key}`,
        name: `Open ${apart(card.name)}`,
        kind: 'build',
        note: `1:${card.scale}`,
        isDeep: true,
        run: () => void openBuild(card),
      }),
    );
  return [...kept, demo];
}
