/** What has to be said about keeping, a line each, with what can be done about it. */
import { idFrom } from '../../ground/id.ts';
import { type Notice, putNoticeAway, type Remedy, useStatus } from '../keeping/status.ts';
import { saveText, saveWork } from '../opening/save.ts';
import { lay } from '../overlay/overlay.ts';

const remedies: Readonly<Record<Remedy, { readonly name: string; readonly act: () => void }>> = {
  save: { name: 'Save a file', act: () => void saveWork() },
  builds: { name: 'Show builds', act: () => lay({ kind: 'builds' }) },
  'unreadable-racks': {
    name: 'Save what could not be read',
    act: () => void saveUnreadableRacks(),
  },
};

/** Each to a file of its own, just as it is kept. */
async function saveUnreadableRacks(): Promise<void> {
  const { unreadableRacks } = await import('../keeping/store/racks.ts');
  for (const { name, text } of await unreadableRacks()) {
    saveText(text, `${idFrom(name, 'rack')}.json`);
  }
}

/** Always there, so that screen readers hear what appears in it. */
export function Notices() {
  const notices = useStatus((status) => status.notices);
  return (
    <div className="notices" role="status">
      {notices.map((notice) => (
        <Line key={notice.id} notice={notice} />
      ))}
    </div>
  );
}

function Line({ notice }: { notice: Notice }) {
  return (
    <div className="notice">
      <p>{notice.text}</p>
      <span className="notice-tools">
        {(notice.remedies ?? []).map((remedy) => (
          <button key={remedy} type="button" className="text-button" onClick={remedies[remedy].act}>
            {remedies[remedy].name}
          </button>
        ))}
        <button type="button" className="text-button" onClick={() => putNoticeAway(notice.id)}>
          Close this line
        </button>
      </span>
    </div>
  );
}
