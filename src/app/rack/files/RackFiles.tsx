/** Finishes in and out of the racks: two buttons, each with its dialog. */
import { lazy, Suspense, useState } from 'react';
import { layBringing } from './bring.ts';

const SaveRack = lazy(async () => ({ default: (await import('./SaveRack.tsx')).SaveRack }));

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
      {isSaving ? (
        <Suspense fallback={null}>
          <SaveRack rack={rack} onClose={() => setSaving(false)} />
        </Suspense>
      ) : null}
    </>
  );
}
