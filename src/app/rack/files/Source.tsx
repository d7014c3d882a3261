/** Where finishes come from: files chosen or dropped here, or a table pasted. */
import { type RefObject, useEffect, useRef, useState } from 'react';
import { addReadings, dropReading } from './bring.ts';
import { readRackFile, readRackText } from './reading.ts';

const pasted = 'Pasted table';
/** Longer text is read at once and not kept in the box, which would be slow. */
const mostInBox = 20_000;

/** The button, the box and the place to drop files on; small once something was read. */
export function Source({ isSmall }: { readonly isSmall: boolean }) {
  const input = useRef<HTMLInputElement>(null);
  const [text, setText] = useState('');
  const [isReading, setReading] = useState(false);

  const takeFiles = async (files: Iterable<File>): Promise<void> => {
    setReading(true);
    addReadings(await Promise.all(Array.from(files, readRackFile)));
    setReading(false);
  };
  const place = useRef<HTMLDivElement>(null);
  const isOver = useDrop(place, takeFiles);
  // Read once the typing rests, so that a long table is not read at every key.
  useEffect(() => {
    if (text === '') return;
    const timer = setTimeout(() => addReadings([readRackText(text, pasted)]), 250);
    return () => clearTimeout(timer);
  }, [text]);

  return (
    <div ref={place} className={isOver ? 'files-source files-over' : 'files-source'}>
      <p className="buttons">
        <button type="button" className="button" onClick={() => input.current?.click()}>
          Choose files…
        </button>
        <span>
          {isSmall
            ? 'or drop more of them here.'
            : 'or drop them here: a rack saved as JSON, or a table saved as CSV or as text with tabs.'}
        </span>
      </p>
      <input
        ref={input}
        className="unseen"
        type="file"
        multiple
        accept=".json,.csv,.tsv,.tab,.txt,application/json,text/csv,text/tab-separated-values,text/plain"
        aria-label="Rack files"
        tabIndex={-1}
        onChange={({ currentTarget }) => {
          void takeFiles(Array.from(currentTarget.files ?? []));
          currentTarget.value = '';
        }}
      />
      <div className="field">
        <label htmlFor="bring-paste">Or paste a table</label>
        <textarea
          id="bring-paste"
          className="entry"
          rows={isSmall ? 2 : 5}
          value={text}
          spellCheck={false}
          aria-describedby="bring-paste-told"
          onPaste={(event) => {
            const table = event.clipboardData.getData('text/plain');
            if (table.length <= mostInBox) return;
            event.preventDefault();
            setText('');
            addReadings([readRackText(table, pasted)]);
          }}
          onChange={({ currentTarget }) => {
            setText(currentTarget.value);
            if (currentTarget.value === '') dropReading(pasted);
          }}
        />
        <p id="bring-paste-told" className={isSmall ? 'unseen' : 'field-hint'}>
          One finish a row. Needed: a column of names and one of colours (Hex, or L, a, b). Known
          besides: gloss, finish, how obtained, on hand, days, notes. With the names of the columns
          in the first row.
        </p>
      </div>
      <p role="status" className="unseen">
        {isReading ? 'Reading' : ''}
      </p>
    </div>
  );
}

/** Whether files hang over the dialog around `place`; letting go of them calls `onFiles`. */
function useDrop(
  place: RefObject<HTMLElement | null>,
  onFiles: (files: Iterable<File>) => Promise<void>,
): boolean {
  const [isOver, setOver] = useState(false);
  const latest = useRef(onFiles);
  latest.current = onFiles;
  useEffect(() => {
    const dialog = place.current?.closest('dialog');
    if (dialog == null) return;
    // The page would open what is dropped elsewhere; here it stays in the dialog.
    const over = (event: DragEvent): void => {
      if (!event.dataTransfer?.types.includes('Files')) return;
      event.preventDefault();
      event.stopPropagation();
      setOver(true);
    };
    const leave = ({ relatedTarget }: DragEvent): void => {
      if (!(relatedTarget instanceof Node && dialog.contains(relatedTarget))) setOver(false);
    };
    const drop = (event: DragEvent): void => {
      const files = event.dataTransfer?.files;
      if (files === undefined || files.length === 0) return;
      event.preventDefault();
      event.stopPropagation();
      setOver(false);
      void latest.current(files);
    };
    dialog.addEventListener('dragover', over);
    dialog.addEventListener('dragleave', leave);
    dialog.addEventListener('drop', drop);
    return () => {
      dialog.removeEventListener('dragover', over);
      dialog.removeEventListener('dragleave', leave);
      dialog.removeEventListener('drop', drop);
    };
  }, [place]);
  return isOver;
}
