/** The head of the page: what is open, its story in a line, undo and redo, files. */
import { useState } from 'react';
import { isOpen } from '../../build/build.ts';
import { useWork } from '../store.ts';
import { Files } from './Files.tsx';
import { History } from './History.tsx';

/** Name and story of the build, and what can be done with it. */
export function Head() {
  const { build, car } = useWork();
  const open = build.parts.filter((part) => isOpen(part) && !part.absent).length;
  return (
    <header className="head">
      <div className="head-words">
        <p className="mark">Testspoon</p>
        <h1>{build.name}</h1>
        <p className="head-facts">
          {car.sight.name}, 1:{build.scale}; {open} {open === 1 ? 'part' : 'parts'} open
          {build.wantedBy === undefined ? null : <>; wanted by {dayInWords(build.wantedBy)}</>}
        </p>
        {build.story === undefined ? null : <Story text={build.story} />}
      </div>
      <div className="head-tools">
        <History />
        <Files />
      </div>
    </header>
  );
}

const longestLine = 360;

/** The story: a line, or a line and the rest on request. */
function Story({ text }: { text: string }) {
  const [isWhole, setWhole] = useState(false);
  if (text.length <= longestLine) return <p className="story">{text}</p>;
  return (
    <p className="story">
      {isWhole ? text : `${text.slice(0, longestLine).replace(/\s+\S*$/, '')} … `}
      <button type="button" className="text-button" onClick={() => setWhole(!isWhole)}>
        {isWhole ? 'Less' : 'More'}
      </button>
    </p>
  );
}

/** 2031-05-24 as 24 May 2031. */
const dayInWords = (date: string): string =>
  new Intl.DateTimeFormat('en-GB', { dateStyle: 'long', timeZone: 'UTC' }).format(new Date(date));
