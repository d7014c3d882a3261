/** The bench: head, stage, part table, score sheets. */
import { useEffect, useLayoutEffect } from 'react';
import { useArea } from './area.ts';
import { Cars } from './cars/Cars.tsx';
import { listenForCommands } from './commands/key.ts';
import { FinishEditing } from './finish/FinishEditing.tsx';
import { Head } from './head/Head.tsx';
import { Notices } from './head/Notices.tsx';
import { useStatus } from './keeping/status.ts';
import { later } from './later.tsx';
import { useStagedCount } from './onStage.ts';
import { Overlays } from './overlay/Overlays.tsx';
import { Said } from './overlay/Said.tsx';
import { Grains } from './pieces/Grains.tsx';
import { pointNowhere } from './pointing.ts';
import { listenForPrinting } from './print/listen.ts';
import { Sheets, Standing } from './sheet/Sheets.tsx';
import { useWork } from './store.ts';
import { Chooser } from './table/Chooser.tsx';
import { PartTable } from './table/PartTable.tsx';

const Rules = later('The rules', async () => (await import('./rules/Rules.tsx')).Rules);
const RackArea = later('The rack', async () => (await import('./rack/RackArea.tsx')).RackArea, {
  meanwhile: 'The spoons are on their way.',
});
const RankingArea = later(
  'The ranking',
  async () => (await import('./ranking/RankingArea.tsx')).RankingArea,
  { meanwhile: 'The ranking is on its way.' },
);
const titles = {
  bench: { id: 'parts-title', name: 'To the part table' },
  rack: { id: 'rack-title', name: 'To the rack' },
  ranking: { id: 'ranking-title', name: 'To the ranking' },
} as const;

/** Told once it has been drawn: work that the page cannot draw never replaces work it can. */
function Drawn() {
  const work = useWork();
  useEffect(() => useStatus.setState({ drawn: work }), [work]);
  return null;
}

/** The whole page once work is open; a change draws only what depends on it. */
export function App() {
  const area = useArea((shown) => shown.area);
  const staged = useStagedCount();
  useEffect(listenForCommands, []);
  useEffect(listenForPrinting, []);
  useEffect(() => {
    const onKey = ({ key }: KeyboardEvent): void => {
      if (key === 'Escape') pointNowhere();
    };
    document.addEventListener('keydown', onKey);
    return () => document.removeEventListener('keydown', onKey);
  }, []);
  useLayoutEffect(() => {
    // What scrolls is the root, and how far depends on what is held at its edges.
    document.documentElement.dataset.area = area;
  }, [area]);
  useEffect(() => {
    // Keeping and racks are fetched once the page stands; nothing on the first page waits for them.
    void import('./keeping/begin.ts').then(({ beginKeeping }) => beginKeeping());
  }, []);
  return (
    <div
      className="page"
      ref={(page) => page?.style.setProperty('--count', String(Math.max(1, staged)))}
    >
      <Grains />
      <a className="skip" href={`#${titles[area].id}`}>
        {titles[area].name}
      </a>
      <Head />
      <Notices />
      <main>
        <Cars />
        {area === 'rack' ? <RackArea /> : area === 'ranking' ? <RankingArea /> : null}
        {area === 'bench' ? (
          <>
            <Standing />
            <PartTable />
            <Rules />

            <Sheets />
          </>
        ) : null}
      </main>
      <Chooser />
      <Overlays />
      <FinishEditing />
      <Said />
      <Drawn />
    </div>
  );
}
