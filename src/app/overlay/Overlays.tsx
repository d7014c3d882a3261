/** The dialog that lies over the page, fetched when it is first asked for. */
import type { ReactNode } from 'react';
import { later } from '../later.tsx';
import { clear, type Overlay, useOverlay } from './overlay.ts';

type Kind = Overlay['kind'];

const dialogs: {
  readonly [K in Kind]?: (props: Extract<Overlay, { kind: K }>) => ReactNode;
} = {
  part: later(
    'The card of this part',
    async () => (await import('../parts/PartCard.tsx')).PartCard,
    { onGiveUp: clear },
  ),
  parts: later('The list of parts', async () => (await import('../parts/PartList.tsx')).PartList, {
    onGiveUp: clear,
  }),
  alternative: later(
    'The card of this alternative',
    async () => (await import('../alternatives/AlternativeCard.tsx')).AlternativeCard,
    { onGiveUp: clear },
  ),
  build: later(
    'The card of this build',
    async () => (await import('../model/BuildCard.tsx')).BuildCard,
    { onGiveUp: clear },
  ),
  builds: later('The list of builds', async () => (await import('../builds/Builds.tsx')).Builds, {
    onGiveUp: clear,
  }),
  new: later(
    'What begins a new build',
    async () => (await import('../model/NewBuild.tsx')).NewBuild,
    { onGiveUp: clear },
  ),
  bring: later(
    'What brings finishes in',
    async () => (await import('../rack/files/BringFinishes.tsx')).BringFinishes,
    { onGiveUp: clear },
  ),
  ask: later('What asks viewers', async () => (await import('../ask/AskViewers.tsx')).AskViewers, {
    onGiveUp: clear,
  }),
  commands: later('The search', async () => (await import('../commands/Commands.tsx')).Commands, {
    onGiveUp: clear,
  }),
};

/** Nothing while no dialog is asked for. */
export function Overlays() {
  const overlay = useOverlay((laid) => laid.overlay);
  if (overlay === undefined) return null;
  const Dialog = dialogs[overlay.kind] as ((props: Overlay) => ReactNode) | undefined;
  if (Dialog === undefined) return null;
  return <Dialog {...overlay} />;
}
