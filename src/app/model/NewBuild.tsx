/**
 * A new build: what it begins with, what it is called, its scale. What was open stays one undo away,
 * and nothing is asked that cannot be changed later.
 */
import { useEffect, useRef, useState } from 'react';
import { blankBuild, sameShape } from '../../build/start.ts';
import { goTo } from '../area.ts';
import { useStatus } from '../keeping/status.ts';
import { askForFile } from '../opening/ask.ts';
import { carFrom } from '../opening/garage.ts';
import { demoWork } from '../opening/start.ts';
import { clear, cleared } from '../overlay/overlay.ts';
import { Dialog } from '../pieces/Dialog.tsx';
import { Field } from '../pieces/Field.tsx';
import { nameFault } from '../pieces/naming.ts';
import { sayDone } from '../pieces/said.ts';
import { open } from '../store.ts';
import { Scale } from './Scale.tsx';
import './model.css';

type Beginning = 'blank' | 'demo';

const beginnings: readonly { beginning: Beginning; name: string; means: string }[] = [
  {
    beginning: 'blank',
    name: 'A blank roadster',
    means: 'every part is there in grey primer or plain trim; you say what is painted and open.',
  },
  {
    beginning: 'demo',
    name: 'The demo’s parts, rules and finishes',
    means: 'nothing is painted yet; its open parts, candidates and rules are yours to change.',
  },
];

/** The only model there is so far. */
const onlyCar = 'roadster';
/** The commonest scale of car kits; common practice, no source. */
const usualScale = 24;

/** The dialog for a new build. */
export function NewBuild() {
  const [beginning, setBeginning] = useState<Beginning>('blank');
  const [name, setName] = useState('');
  const [scale, setScale] = useState(usualScale);
  const [trouble, setTrouble] = useState<string>();
  const form = useRef<HTMLFormElement>(null);
  useEffect(() => {
    // By keyboard the name comes first; a finger would only meet a keyboard over the choices.
    if (!window.matchMedia('(pointer: fine)').matches) return;
    form.current?.querySelector<HTMLInputElement>('input[type="text"]')?.focus();
  }, []);
  const isNameless = name.trim() === '';
  const fault = isNameless ? undefined : nameFault(name);

  const create = async (): Promise<void> => {
    const called = { name: isNameless ? 'New roadster' : name.trim(), scale };
    try {
      const work = await begun(beginning, called);
      // The demo as it was made is nobody's own and lies under Builds at any time.
      const isKept = useStatus.getState().state !== 'unkept';
      clear();
      goTo('bench');
      open(work);
      sayDone(
        `${called.name} lies on the bench now.${isKept ? ' What was open is under Builds.' : ''}`,
      );
      window.scrollTo(0, 0);
    } catch (error) {
      setTrouble(error instanceof Error ? error.message : String(error));
    }
  };
  return (
    <Dialog
      title="New build"
      className="new-build"
      onClose={() => cleared('new')}
      closing="Not now"
    >
      <form
        ref={form}
        className="model-card"
        onSubmit={(event) => {
          event.preventDefault();
          if (fault === undefined) void create();
        }}
      >
        <fieldset className="standings">
          <legend className="field-label">Begin with</legend>
          {beginnings.map(({ beginning: one, name: words, means }) => (
            <label key={one} className="tick">
              <input
                type="radio"
                name="beginning"
                checked={beginning === one}
                onChange={() => setBeginning(one)}
              />
              <span>
                <strong>{words}</strong>: {means}
              </span>
            </label>
          ))}
        </fieldset>
        <Field
          label="Name"
          value={name}
          hint="Left empty, it is called New roadster; it can be renamed at any time."
          onType={(text) => {
            setName(text);
            return text.trim() === '' ? undefined : nameFault(text);
          }}
        />
        <Scale value={scale} onChange={setScale} />
        <p>
          <span className="field-label">Which model?</span>
          Roadster. It is the only model so far; parts that yours lacks can be left off.
        </p>
        {trouble === undefined ? null : (
          <p role="alert">It could not be begun: {trouble}. What was open is untouched.</p>
        )}
        <div className="buttons">
          <button type="submit" className="button button-strong" disabled={fault !== undefined}>
            Begin this build
          </button>
          <button
            type="button"
            className="button"
            onClick={() => {
              clear();
              askForFile();
            }}
          >
            Open a build from a file instead…
          </button>
        </div>
      </form>
    </Dialog>
  );
}

async function begun(beginning: Beginning, called: { name: string; scale: number }) {
  if (beginning === 'demo') {
    const { build, car } = await demoWork();
    return { build: sameShape(build, called), car };
  }
  const car = await carFrom(onlyCar);
  return { build: blankBuild({ car: onlyCar, ...called }, car.sight), car };
}
