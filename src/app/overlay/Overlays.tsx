/** The dialog that lies over the page, fetched when it is first asked for. */
import { type ComponentType, Suspense } from 'react';
import { type Overlay, useOverlay } from './overlay.ts';

type Kind = Overlay['kind'];

const dialogs: { readonly [K in Kind]?: ComponentType<Extract<Overlay, { kind: K }>> } = {};

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
