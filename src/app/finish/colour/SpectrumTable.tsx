/** The colour as a measured spectrum, pasted as a table; the curve shows what was understood. */
import { useEffect, useRef, useState } from 'react';
import { setSpectrum } from '../../../finish/edit/colour.ts';
import { spectrumFromText } from '../../../finish/edit/spectrum.ts';
import { numberTyped } from '../../../finish/edit/typed.ts';
import type { Colour } from '../../../finish/finish.ts';
import { problemSentence } from '../../../ground/problem.ts';
import { Field } from '../../pieces/Field.tsx';
import type { Live } from '../live.ts';
import { Curve } from './Curve.tsx';

const mostTold = 3;

const textOf = (colour: Colour): string =>
  'spectrum' in colour
    ? colour.spectrum.nm.map((nm, at) => `${nm}\t${colour.spectrum.reflectance[at]}`).join('\n')
    : '';

/** A place to paste into, and the curve. */
export function SpectrumTable({ live: { finish, take } }: { live: Live }) {
  const { colour } = finish;
  const [text, setText] = useState(() => textOf(colour));
  const [grid, setGrid] = useState({ firstNm: 400, stepNm: 10 });
  const [remarks, setRemarks] = useState<readonly string[]>([]);
  const own = useRef<Colour>(colour);
  // What came from elsewhere, by undo for example, takes the place of what was pasted.
  useEffect(() => {
    if (own.current === colour) return;
    own.current = colour;
    setText(textOf(colour));
    setRemarks([]);
  }, [colour]);
  const read = (pasted: string, by: typeof grid): string | undefined => {
    const found = spectrumFromText(pasted, by);
    if ('problems' in found) {
      setRemarks([]);
      return toldIn(found.problems.map(problemSentence));
    }
    setRemarks(found.remarks);
    return take((now) => {
      const next = setSpectrum(now, found.spectrum);
      own.current = next.colour;
      return next;
    });
  };
  const gridField = (label: string, key: keyof typeof grid, low: number, high: number) => (
    <Field
      label={label}
      kind="number"
      unit="nm"
      value={String(grid[key])}
      onType={(typed) => {
        const { value, fault } = numberTyped(typed, { low, high });
        if (value === undefined) return fault;
        const next = { ...grid, [key]: value };
        setGrid(next);
        return text.trim() === '' ? undefined : read(text, next);
      }}
    />
  );
  return (
    <>
      <Field
        label="Wavelength in nm and reflectance, a line each"
        lines={5}
        value={text}
        hint="Paste two columns, or values alone; 0 to 1 or percent, covering 400 to 700 nm."
        onType={(pasted) => {
          setText(pasted);
          return read(pasted, grid);
        }}
      />
      <p role="status" className="editor-remark">
        {remarks.join(' ')}
      </p>
      <div className="fields">
        {gridField('Values alone start at', 'firstNm', 300, 400)}
        {gridField('in steps of', 'stepNm', 1, 50)}
      </div>
      <Curve colour={colour} />
    </>
  );
}

const toldIn = (sentences: readonly string[]): string => {
  const more = sentences.length - mostTold;
  const told = sentences.slice(0, mostTold).join(' ');
  return more > 0 ? `${told} And ${more} more like these.` : told;
};
