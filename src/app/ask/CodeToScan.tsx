/** The link as a code for a screen or a table: shown, shown large, saved, printed with the cars. */
import { useMemo, useRef, useState } from 'react';
import { createPortal } from 'react-dom';
import { lettersIn, type Round } from '../../opinion/round.ts';
import { listed } from '../../opinion/spoken.ts';
import { savePicture } from '../picture/handing.ts';
import { fileNameOf } from '../picture/words.ts';
import { useWork } from '../store.ts';
import { type Code, codeOf, longestCode, pictureOfCode } from './code.ts';
import { counted } from './length.ts';
import { neutralPicture } from './neutral.ts';
import type { Wanted } from './wanted.ts';

interface CodeToScanProps {
  readonly address: string;
  readonly round: Round;
  readonly wanted: Wanted;
}

/** The code and what can be done with it; why there is none where the link is too long for one. */
export function CodeToScan({ address, round, wanted }: CodeToScanProps) {
  const code = useMemo(() => codeOf(address), [address]);
  return (
    <section className="ask-scan">
      <h3>A code to scan</h3>
      {code === undefined ? (
        <p>
          With {counted(address.length)} characters the code would be too fine for a phone to read
          off a screen. One is drawn up to {counted(longestCode)}.
        </p>
      ) : (
        <Scan key={address} code={code} round={round} wanted={wanted} />
      )}
    </section>
  );
}

function Scan({ code, round, wanted }: { code: Code; round: Round; wanted: Wanted }) {
  const work = useWork();
  const large = useRef<HTMLDialogElement>(null);
  const [told, setTold] = useState('');
  const [cars, setCars] = useState<string>();
  const letters = lettersIn(round);
  const save = (): void => {
    const name = fileNameOf(round.build, letters, 'code');
    savePicture(Promise.resolve(pictureOfCode(code)), name).then(
      () => setTold(`Saved as ${name}.`),
      (error: unknown) => setTold(`No picture: ${String(error)}.`),
    );
  };
  const print = async (): Promise<void> => {
    setTold('Drawing…');
    // Without a picture of the cars the code and the letters are printed all the same.
    const picture = await neutralPicture(work, wanted, 'wide').catch(() => undefined);
    setCars(picture?.toDataURL('image/jpeg', 0.92));
    setTold('');
    // Once the picture lies in the page.
    setTimeout(() => window.print(), 100);
  };
  return (
    <>
      <Drawn code={code} />
      <div className="ask-beside">
        <p>For a screen, a club table, or the end of a video.</p>
        <div className="buttons">
          <button type="button" className="button" onClick={() => large.current?.showModal()}>
            Show large
          </button>
          <button type="button" className="button" onClick={save}>
            Save code
          </button>
          <button type="button" className="button" onClick={() => void print()}>
            Print a sheet
          </button>
        </div>
        <p role="status">{told}</p>
      </div>
      <dialog
        ref={large}
        className="ask-large"
        aria-label="Code to scan"
        // Its closing is not that of the dialog it lies over, which would hear of it too.
        onClose={(event) => event.stopPropagation()}
      >
        <p className="ask-large-words">
          <bdi>{round.build.name}</bdi>: {listed(letters, 'or')}?
        </p>
        <Drawn code={code} />
        <button type="button" className="button" onClick={() => large.current?.close()}>
          Back
        </button>
      </dialog>
      {createPortal(
        <div className="ask-sheet" aria-hidden="true">
          <h1>
            <bdi>{round.build.name}</bdi>
          </h1>
          <p>Which would you choose: {listed(letters, 'or')}?</p>
          {cars === undefined ? null : <img src={cars} alt="" />}
          <Drawn code={code} />
          <p>Scan to see the cars closer and to answer.</p>
        </div>,
        document.body,
      )}
    </>
  );
}

function Drawn({ code: { side, path } }: { code: Code }) {
  return (
    <svg
      className="ask-code"
      viewBox={`0 0 ${side} ${side}`}
      role="img"
      aria-label="Code that leads to the link"
      shapeRendering="crispEdges"
    >
      <rect width={side} height={side} fill="#fff" />
      <path d={path} fill="#000" />
    </svg>
  );
}
