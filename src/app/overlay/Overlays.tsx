/** The dialog that lies over the page, fetched when it is first asked for. */
import { type ComponentType, lazy, Suspense } from 'react';
import { type Overlay, useOverlay } from './overlay.ts';

type Kind = Overlay['kind'];

const dialogs: { readonly [K in Kind]?: ComponentType<Extract<Overlay, { kind: K }>> } = {
  part: lazy(() => import('../parts/PartCard.tsx').then((at) => ({ default: at.PartCard }))),
  parts: lazy(() => import('../parts/PartList.tsx').then((at) => ({ default: at.PartList }))),
  alternative: lazy(() =>
    import('../alternatives/AlternativeCard.tsx').then((at) => ({ default: at.AlternativeCard })),
  ),
  build: lazy(() => import('../model/BuildCard.tsx').then((at) => ({ default: at.BuildCard }))),
  builds: lazy(async () => ({ default: (await import('../builds/Builds.tsx')).Builds })),
  new: lazy(() => import('../model/NewBuild.tsx').then((at) => ({ default: at.NewBuild }))),
  bring: lazy(async () => ({
    default: (await import('../rack/files/BringFinishes.tsx')).BringFinishes,
  })),
  commands: lazy(async () => ({ default: (await import('../commands/Commands.tsx')).Commands })),
};

/** Nothing while no dialog is asked for. */
export function Overlays() {
  const overlay = useOverlay((laid) => laid.overlay);
  if (overlay === undefined) return null;
  const Dialog = dialogs[overlay.kind] as ComponentType<Overlay> | undefined;
  if (Dialog === undefined) return null;
  return (
    <Suspense fallback={null}>
      <Dialog {...overlay} />
    </Suspense>
  );
}
