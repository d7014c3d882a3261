/** Which file should a rack become? A table, the whole as JSON, or its colours for other programs. */
import { useState } from 'react';
import { csvFromRack } from '../../../finish/rack/csv.ts';
import { textOfRack } from '../../../finish/rack/rack.ts';
import { tokensText } from '../../../finish/rack/tokens.ts';
import { saveText } from '../../opening/save.ts';
import { Dialog } from '../../pieces/Dialog.tsx';
import { useRacks, useWork } from '../../store.ts';
import { countOf } from '../told.ts';
import './files.css';
import '../../pieces/form.css';

const tokensType = 'application/design-tokens+json';

/** Shown until `onClose`; the rack looked at is chosen first. */
export function SaveRack(props: {
  readonly rack: string | undefined;
  readonly onClose: () => void;
}) {
  const racks = useRacks() ?? [];
  const { build } = useWork();
  const [chosen, choose] = useState(props.rack);
  const rack = racks.find(({ id }) => id === chosen) ?? racks[0];
  return (
    <Dialog title="Save as a file" className="files" onClose={props.onClose} closing="Close">
      {rack === undefined ? (
        <p>There is no rack yet.</p>
      ) : (
        <>
          <div className="field">
            <label htmlFor="save-rack">Rack</label>
            <select
              id="save-rack"
              className="entry"
              value={rack.id}
              onChange={({ currentTarget }) => choose(currentTarget.value)}
            >
              {racks.map(({ id, name, finishes }) => (
                <option key={id} value={id}>
                  {name} ({finishes.length.toLocaleString('en-GB')})
                </option>
              ))}
            </select>
          </div>
          <ul className="files-forms">
            <Form
              name={`${rack.id}.json`}
              about="The whole rack, to keep or to hand on. It comes back exactly as it is."
              text={() => textOfRack(rack)}
              type="application/json"
            />
            <Form
              name={`${rack.id}.csv`}
              about="A table for a spreadsheet, one finish a row. It comes back exactly as it is."
              text={() => csvFromRack(rack)}
              type="text/csv"
            />
            <Form
              name={`${rack.id}.tokens.json`}
              about="Colours only, as design tokens (W3C community group, 2025.10), for drawing programs. Sheen, films and bottles stay behind."
              text={() => tokensText(rack.name, rack.finishes)}
              type={tokensType}
            />
          </ul>
        </>
      )}
      <h3>The open build</h3>
      <ul className="files-forms">
        <Form
          name={`${build.id}.tokens.json`}
          about={`The colours of ${build.name}, ${countOf(build.finishes.length)}, as design tokens.`}
          text={() => tokensText(build.name, build.finishes)}
          type={tokensType}
        />
      </ul>
    </Dialog>
  );
}

interface FormProps {
  readonly name: string;
  readonly about: string;
  readonly text: () => string;
  readonly type: string;
}

function Form({ name, about, text, type }: FormProps) {
  return (
    <li>
      <button type="button" className="button" onClick={() => saveText(text(), name, type)}>
        Save {name}
      </button>
      <p>{about}</p>
    </li>
  );
}
