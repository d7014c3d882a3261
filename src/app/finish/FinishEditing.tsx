/** The finish editor, fetched when it is first asked for. */

import { later } from '../later.tsx';
import { stopEditing, useEditing } from './editing.ts';

const FinishEditor = later(
  'The editor of finishes',
  async () => (await import('./FinishEditor.tsx')).FinishEditor,
  { onGiveUp: stopEditing },
);

/** Nothing while no finish is edited. */
export function FinishEditing() {
  const edited = useEditing((editing) => editing.edited);
  if (edited === undefined) return null;
  return <FinishEditor key={`${edited.rack}/${edited.finish}`} {...edited} onClose={stopEditing} />;
}
