/** The colour as CIELAB figures from an instrument, a book or a data sheet. */
import { labOf, rounded, setColour } from '../../../finish/edit/colour.ts';
import { numberTyped } from '../../../finish/edit/typed.ts';
import { Choice } from '../../pieces/Choice.tsx';
import { Field } from '../../pieces/Field.tsx';
import type { Live } from '../live.ts';

const axes = [
  { label: 'L* (0 black, 100 white)', low: 0, high: 100 },
  { label: 'a* (− green, + red)', low: -160, high: 160 },
  { label: 'b* (− blue, + yellow)', low: -160, high: 160 },
] as const;
const lights = [
  { value: 'D65', name: 'Daylight, D65' },
  { value: 'D50', name: 'Warm daylight, D50' },
] as const;

/** Three figures and the light they are for. */
export function LabFigures({ live: { finish, take } }: { live: Live }) {
  const { colour } = finish;
  const figures = 'lab' in colour ? colour.lab : rounded(labOf(colour));
  const light = 'lab' in colour ? colour.light : 'D65';
  const put = (at: number, value: number): string | undefined =>
    take((now) => {
      const own = 'lab' in now.colour ? now.colour.lab : rounded(labOf(now.colour));
      const [l, a, b] = own.with(at, value) as [number, number, number];
      return setColour(now, { lab: [l, a, b], light });
    });
  return (
    <>
      <div className="fields lab-figures">
        {axes.map(({ label, low, high }, at) => (
          <Field
            key={label}
            label={label}
            kind="number"
            value={String(figures[at])}
            onType={(text) => {
              const { value, fault } = numberTyped(text, { low, high });
              return value === undefined ? fault : put(at, value);
            }}
          />
        ))}
      </div>
      <Choice
        legend="These figures are for"
        value={light}
        options={lights}
        onChoose={(chosen) =>
          take((now) => {
            const own = 'lab' in now.colour ? now.colour.lab : rounded(labOf(now.colour));
            return setColour(now, { lab: own, light: chosen });
          })
        }
      />
    </>
  );
}
