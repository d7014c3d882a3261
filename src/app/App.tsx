/** The bench: head, stage, part table, score sheets. */
import { useEffect, useRef, useState } from 'react';
import type { Build } from '../build/build.ts';
import { useArea } from './area.ts';
import { Cars } from './cars/Cars.tsx';
import { Head } from './head/Head.tsx';
import { keep } from './opening/keep.ts';
import { Overlays } from './overlay/Overlays.tsx';
import { Grains } from './pieces/Grains.tsx';
import { pointNowhere } from './pointing.ts';
import { Sheets, Standing } from './sheet/Sheets.tsx';
import { useWork } from './store.ts';
import { Chooser } from './table/Chooser.tsx';
import { PartTable } from './table/PartTable.tsx';

interface AppProps {
  /** What the builder should know about how the page opened. */
  readonly greeting: string | undefined;
  /** False where keeping would overwrite work that could not be set aside. */
  readonly mayKeep: boolean;
}

/** The whole page once work is open. */
export function App({ greeting, mayKeep }: AppProps) {
  const { build } = useWork();
  const area = useArea((shown) => shown.area);
  const isKept = useKeeping(build, mayKeep);
  useEffect(() => {
    const onKey = ({ key }: KeyboardEvent): void => {
      if (key === 'Escape') pointNowhere();
    };
    document.addEventListener('keydown', onKey);
    return () => document.removeEventListener('keydown', onKey);
  }, []);
  useEffect(() => {
    // Racks are fetched once the page stands; nothing on the first page waits for them.
    void import('./keeping/racks.ts').then(({ fetchRacks }) => fetchRacks());
  }, []);
  return (
    <div
      className="page"
      data-area={area}
      ref={(page) =>
        page?.style.setProperty('--count', String(Math.max(1, build.alternatives.length)))
      }
    >
      <Grains />
      <a className="skip" href="#parts-title">
        To the part table
      </a>
      <Head />
      <Notice text={greeting} />
      {isKept ? null : (
        <Notice text="This browser does not keep work between visits. Save a file before you leave." />
      )}
      <main>
        <Cars />
        {area === 'rack' ? null : (
          <>
            <Standing />
            <PartTable />
            <Sheets />
          </>
        )}
      </main>
      <Chooser />
      <Overlays />
    </div>
  );
}

/**
 * Keeps every change in the browser once it has been drawn, so that work the page cannot draw never
 * replaces work it can; false once the browser has refused.
 */
function useKeeping(build: Build, mayKeep: boolean): boolean {
  const [isKept, setKept] = useState(true);
  const first = useRef<Build | undefined>(build);
  useEffect(() => {
    // What was opened with is kept already, or is the untouched demo.
    if (build === first.current || !mayKeep) return;
    first.current = undefined;
    setKept(keep(build));
  }, [build, mayKeep]);
  return isKept;
}

/** One line that can be put away. */
function Notice({ text }: { text: string | undefined }) {
  const [isRead, setRead] = useState(false);
  if (text === undefined || isRead) return null;
  return (
    <p className="notice" role="status">
      {text}
      <button type="button" className="text-button" onClick={() => setRead(true)}>
        Close this line
      </button>
    </p>
  );
}
