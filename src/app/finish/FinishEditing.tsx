/** The finish editor, fetched when it is first asked for. */
import { lazy, Suspense } from 'react';
import { stopEditing, useEditing } from './editing.ts';

const FinishEditor = lazy(async () => ({
  default: (await import('./FinishEditor.tsx')).FinishEditor,
}));

/** Nothing while no finish is edited. */
export function FinishEditing() {
  const edited = useEditing((editing) => editing.edited);
  if (edited === undefined) return null;
  return (
    <Suspense fallback={null}>
      <FinishEditor key={`${edited.rack}/${edited.finish}`} {...edited} onClose={stopEditing} />
    </Suspense>
  );
}
