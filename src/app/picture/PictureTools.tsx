/** What the cars can be shown with elsewhere: a picture, the whole screen, a question to viewers. */
import { useRef } from 'react';
import { lay } from '../overlay/overlay.ts';
import { pointNowhere } from '../pointing.ts';
import { useBench } from '../store.ts';
import { useFilling } from './filling.ts';
import { Pictures } from './Pictures.tsx';

/** Quiet buttons; in the filled screen only the way back. */
export function PictureTools() {
  const count = useBench(({ work }) => work!.build.alternatives.length);
  const tools = useRef<HTMLDivElement>(null);
  const [isFilling, fill] = useFilling(tools, count, pointNowhere);
  if (count === 0) return null;
  return (
    <div ref={tools} className="picture-tools">
      {isFilling ? null : <Pictures />}
      <button
        type="button"
        className="toggle"
        title={isFilling ? 'Escape leaves too' : 'Only the cars, for filming and showing'}
        onClick={() => fill(!isFilling)}
      >
        {isFilling ? 'Leave full screen' : 'Full screen'}
      </button>
      {isFilling || count < 2 ? null : (
        <button
          type="button"
          className="toggle"
          data-listed
          aria-haspopup="dialog"
          title="A link, a code to scan, a picture, a text"
          onClick={() => lay({ kind: 'ask' })}
        >
          Ask viewers…
        </button>
      )}
    </div>
  );
}
