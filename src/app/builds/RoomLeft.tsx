/** How much the builds take, and whether the browser may clear them. */
import { useEffect, useState } from 'react';
import { type Room, room } from '../keeping/lasting.ts';

/** A line beneath the list; silent about what the browser does not say. */
export function RoomLeft({ count }: { count: number }) {
  const [left, setLeft] = useState<Room>();
  useEffect(() => {
    void room().then(setLeft);
  }, []);
  if (left === undefined) return null;
  const { isLasting, usedBytes } = left;
  return (
    <p className="builds-foot quiet">
      {count === 1 ? 'One build' : `${count} builds`} and your racks are kept in this browser only
      {usedBytes === undefined ? '' : ` (${megabytes(usedBytes)})`}.{' '}
      {isLasting === true
        ? 'It keeps them until you delete them.'
        : 'It may clear them when space runs short; a saved file is safe from that.'}
    </p>
  );
}

const megabytes = (bytes: number): string =>
  bytes < 1e5 ? 'under 0.1 MB' : `${(bytes / 1e6).toFixed(bytes < 1e7 ? 1 : 0)} MB`;
