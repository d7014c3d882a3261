/** Finishes in and out of the racks: two buttons, each with its dialog. */
import { useState } from 'react';
import { later } from '../../later.tsx';
import { layBringing } from './bring.ts';

const SaveRack = later('What saves a rack', async () => (await import('./SaveRack.tsx')).SaveRack);

/** For the rack looked at, or for all. */
export function RackFiles({ rack }: { readonly rack: string | undefined }) {
  const [isSaving, setSaving] = useState(false);
  return (
    <>
      <button type="button" className="button" onClick={() => layBringing([], rack)}>
        Add finishes…
      </button>
      <button type="button" className="button" onClick={() => setSaving(true)}>
        Save as…
      </button>
      {isSaving ? <SaveRack rack={rack} onClose={() => setSaving(false)} /> : null}
    </>
  );
}
