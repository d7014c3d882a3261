/** What colour is it? Told by screen code, beside a spoon, by Lab figures or by a measured spectrum. */
import { useState } from 'react';
import { isReachable, screenOf } from '../../../finish/edit/colour.ts';
import { flopFormOf } from '../../../finish/edit/effect.ts';
import type { Colour } from '../../../finish/finish.ts';
import { Choice } from '../../pieces/Choice.tsx';
import type { Live } from '../live.ts';
import { colourMeaning } from '../words.ts';
import { Beside } from './Beside.tsx';
import { LabFigures } from './LabFigures.tsx';
import { ScreenCode } from './ScreenCode.tsx';
import { SpectrumTable } from './SpectrumTable.tsx';

const ways = [
  { value: 'screen', name: 'Screen colour' },
  { value: 'beside', name: 'Beside a spoon' },
  { value: 'lab', name: 'Lab figures' },
  { value: 'spectrum', name: 'Spectrum' },
] as const;
type Way = (typeof ways)[number]['value'];

const wayOf = (colour: Colour): Way =>
  'srgb' in colour ? 'screen' : 'lab' in colour ? 'lab' : 'spectrum';

/** The four ways; one that was opened keeps what stands in it. */
export function ColourWays({ live, rack }: { live: Live; rack: string }) {
  const { finish } = live;
  const [way, setWay] = useState<Way>(wayOf(finish.colour));
  const [opened, setOpened] = useState<ReadonlySet<Way>>(() => new Set([way]));
  const turn = (to: Way): void => {
    setWay(to);
    setOpened(new Set([...opened, to]));
  };
  const forms: Readonly<Record<Way, React.ReactNode>> = {
    screen: <ScreenCode live={live} />,
    lab: <LabFigures live={live} />,
    spectrum: <SpectrumTable live={live} />,
    beside: <Beside live={live} rack={rack} />,
  };
  return (
    <section className="editor-section">
      <h3>Colour</h3>
      <p className="quiet">{colourMeaning(finish.effect)}</p>
      <Choice legend="Told by" value={way} options={ways} onChoose={turn} />
      {ways.map(({ value }) =>
        opened.has(value) ? (
          <div key={value} className="editor-way" hidden={way !== value}>
            {forms[value]}
          </div>
        ) : null,
      )}
      <p role="status" className="editor-remark">
        {remarkOn(finish.colour)}
        {flopFormOf(finish) === 'colours'
          ? ' Face and flop keep the colours recorded for them, under the kind of finish.'
          : ''}
      </p>
    </section>
  );
}

/** What to know of a colour that screens or surfaces cannot have. */
function remarkOn(colour: Colour): string {
  if (!isReachable(colour)) {
    return (
      'Brighter or purer than a surface that only reflects can be; a fluorescent paint may come ' +
      'near it. What it does under other lamps is indicative only.'
    );
  }
  return screenOf(colour).isClipped
    ? 'More vivid than this screen can show: you see the nearest that it can.'
    : '';
}
