/** What has to be said about keeping, a line each, with what can be done about it. */
import { type Notice, putNoticeAway, type Remedy, useStatus } from '../keeping/status.ts';
import { saveWork } from '../opening/save.ts';
import { lay } from '../overlay/overlay.ts';

const remedies: Readonly<Record<Remedy, { readonly name: string; readonly act: () => void }>> = {
  save: { name: 'Save a file', act: () => void saveWork() },
  builds: { name: 'Show builds', act: () => lay({ kind: 'builds' }) },
};

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
