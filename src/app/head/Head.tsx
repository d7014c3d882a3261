/** The head of the page: what is open and whether it is kept, where one is, what can be done. */
import { useEffect, useState } from 'react';
import { isOpen } from '../../build/build.ts';
import { type Area, goTo, useArea } from '../area.ts';
import { lay } from '../overlay/overlay.ts';
import { useWork } from '../store.ts';
import { Incoming } from './Incoming.tsx';
import { Kept } from './Kept.tsx';
import { Tools } from './Tools.tsx';

/** One line; what does not fit is cut short, and whole when pointed at. */
export function Head() {
  const { build, car } = useWork();
  const open = build.parts.filter((part) => isOpen(part) && !part.absent).length;
  const wanted = build.wantedBy === undefined ? '' : `; wanted by ${dayInWords(build.wantedBy)}`;
  const facts = `${car.sight.name}, 1:${build.scale}; ${open} ${open === 1 ? 'part' : 'parts'} open${wanted}`;
  useEffect(() => {
    document.title = `${build.name} – Testspoon`;
  }, [build.name]);
  return (
    <header className="head">
      <div className="head-what">
        <p className="mark">Testspoon</p>
        <h1>
          <button
            type="button"
            className="head-name"
            dir="auto"
            title={`${build.name}: its name, story, scale, distance and date`}
            onClick={() => lay({ kind: 'build' })}
          >
            <bdi>{build.name}</bdi>
          </button>
        </h1>
        <p className="head-facts" title={facts}>
          {facts}
        </p>
        <Kept />
      </div>
      <div className="head-do">
        <Areas />
        <Tools />
      </div>
      {build.story === undefined ? null : <Story key={build.story} text={build.story} />}
      <Incoming />
    </header>
  );
}

const areas: readonly { readonly area: Area; readonly name: string }[] = [
  { area: 'bench', name: 'Bench' },
  { area: 'rack', name: 'Rack' },
  { area: 'ranking', name: 'Ranking' },
];

/** What lies beneath the cars. */
function Areas() {
  const here = useArea((shown) => shown.area);
  return (
    <nav className="head-areas" aria-label="Beneath the cars">
      {areas.map(({ area, name }) => (
        <button
          key={area}
          type="button"
          aria-current={area === here ? 'page' : undefined}
          onClick={() => goTo(area)}
        >
          {name}
        </button>
      ))}
    </nav>
  );
}

/** Longer stories never fit on one line. */
const oneLine = 120;

/** The story: a line, and the rest on request. */
function Story({ text }: { text: string }) {
  const [isWhole, setWhole] = useState(false);
  return (
    <div className="story">
      <p className={isWhole ? undefined : 'story-line'} dir="auto">
        {text}
      </p>
      {text.length <= oneLine ? null : (
        <button type="button" className="text-button" onClick={() => setWhole(!isWhole)}>
          {isWhole ? 'Less' : 'More of the story'}
        </button>
      )}
    </div>
  );
}

/** 2031-05-24 as 24 May 2031. */
const dayInWords = (date: string): string =>
  new Intl.DateTimeFormat('en-GB', { dateStyle: 'long', timeZone: 'UTC' }).format(new Date(date));
