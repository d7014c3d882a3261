/**
 * Spoons in rows, thousands of them: only those in sight are drawn. One list for the keyboard:
 * arrow keys go along and across, Home and End to the ends, Page Up and Page Down by what is in
 * sight, Enter or Space takes the spoon. By mouse or finger a spoon is pressed, or carried to a car.
 */
import { useVirtualizer } from '@tanstack/react-virtual';
import {
  type KeyboardEvent,
  type MouseEvent,
  useId,
  useLayoutEffect,
  useRef,
  useState,
} from 'react';
import { type EmbeddedFinish, type FinishRef, refOf } from '../../build/build.ts';
import type { LightId } from '../../colour/illuminant.ts';
import { Spoon } from '../pieces/Spoon.tsx';
import { carries } from '../table/carrying.ts';
import { useColumns } from './columns.ts';
import type { Found } from './found.ts';
import './spoons.css';
import { noteOf } from './told.ts';

interface SpoonRowsProps {
  /** What the list is, for who cannot see it. */
  readonly label: string;
  readonly found: Found;
  /** What was asked for; once it changes, the list is looked at from its beginning. */
  readonly asked: string;
  readonly light: LightId;
  readonly chosen: FinishRef | undefined;
  /** Least width of a spoon, rem. */
  readonly narrowestRem?: number;
  /** Pressed, or taken with Enter or Space. */
  readonly onPick: (finish: EmbeddedFinish) => void;
  /** Come to by arrow keys. */
  readonly onMove?: (finish: EmbeddedFinish) => void;
}

/** Usual least width of a spoon, and the height of a row until it has been measured, rem. */
const usualRem = 15.5;
const rowRem = 3.6;

/** A list of spoons that scrolls within itself. */
export function SpoonRows(props: SpoonRowsProps) {
  const { label, found, asked, light, chosen, narrowestRem = usualRem, onPick, onMove } = props;
  const { finishes, deltaE } = found;
  const id = useId();
  const box = useRef<HTMLDivElement>(null);
  const { columns, remPx } = useColumns(box, narrowestRem);
  const [hasFocus, setFocus] = useState(false);
  const [active, setActive] = useActive(finishes, asked, chosen);
  const rows = useVirtualizer({
    count: Math.ceil(finishes.length / columns),
    getScrollElement: () => box.current,
    estimateSize: () => rowRem * remPx,
    overscan: 1,
  });
  const shown = useRef(asked);
  useLayoutEffect(() => {
    if (shown.current === asked) return;
    shown.current = asked;
    // Asking the box itself would lay the page out an extra time.
    if ((rows.scrollOffset ?? 0) > 0) rows.scrollToOffset(0);
  }, [asked, rows]);
  const onKey = (event: KeyboardEvent): void => {
    if (event.ctrlKey || event.metaKey || event.altKey || finishes.length === 0) return;
    const high = Math.max(1, Math.floor((box.current?.clientHeight ?? 0) / (rowRem * remPx)));
    const isBackward = getComputedStyle(event.currentTarget).direction === 'rtl';
    const to = placeAfter(event.key, active, { columns, high, count: finishes.length, isBackward });
    const next = finishes[to ?? active];
    if (to !== undefined && next !== undefined) {
      setActive(to);
      rows.scrollToIndex(Math.floor(to / columns));
      onMove?.(next);
    } else if ((event.key === 'Enter' || event.key === ' ') && next !== undefined) {
      onPick(next);
    } else return;
    event.preventDefault();
  };
  const onPress = ({ target }: MouseEvent): void => {
    const place = target instanceof Element ? target.closest<HTMLElement>('[data-at]') : null;
    const at = Number(place?.dataset.at);
    const pressed = finishes[at];
    if (pressed === undefined) return;
    setActive(at);
    onPick(pressed);
    // The list keeps the focus, since a spoon that is scrolled away is gone.
    box.current?.focus({ preventScroll: true });
  };
  const inSight = rows.getVirtualItems();
  const isDrawn = inSight.some(({ index }) => index === Math.floor(active / columns));
  return (
    <div
      ref={box}
      className="spoon-rows"
      role="listbox"
      aria-label={label}
      tabIndex={0}
      aria-activedescendant={isDrawn && finishes.length > 0 ? `${id}${active}` : undefined}
      onClick={onPress}
      onKeyDown={onKey}
      onFocus={() => setFocus(true)}
      onBlur={() => setFocus(false)}
    >
      <div
        className="spoon-rows-all"
        role="presentation"
        style={{ blockSize: rows.getTotalSize() }}
      >
        {inSight.map(({ index, start }) => (
          <div
            key={index}
            ref={rows.measureElement}
            data-index={index}
            className="spoon-row"
            role="presentation"
            style={{
              transform: `translateY(${start}px)`,
              gridTemplateColumns: `repeat(${columns}, minmax(0, 1fr))`,
            }}
          >
            {finishes.slice(index * columns, (index + 1) * columns).map((finish, column) => {
              const at = index * columns + column;
              const isHere = hasFocus && at === active;
              return (
                <div
                  // By place: what is found next stands where this stood.
                  key={at}
                  id={`${id}${at}`}
                  className={isHere ? 'spoon-place is-active' : 'spoon-place'}
                  role="option"
                  tabIndex={-1}
                  aria-selected={refOf(finish) === chosen}
                  aria-posinset={at + 1}
                  aria-setsize={finishes.length}
                  data-at={at}
                  {...carries(finish)}
                >
                  <Spoon finish={finish} light={light} note={noteOf(finish, light, deltaE?.[at])} />
                </div>
              );
            })}
          </div>
        ))}
      </div>
    </div>
  );
}

/**
 * Place of the spoon that keys are at: the chosen one to begin with, the first once something is
 * asked for; while the same is asked for it stays on its finish, wherever that has gone.
 */
function useActive(
  finishes: readonly EmbeddedFinish[],
  asked: string,
  chosen: FinishRef | undefined,
): readonly [active: number, setActive: (at: number) => void] {
  const [at, setAt] = useState(() => Math.max(0, placeOf(finishes, chosen)));
  const [before, setBefore] = useState({ finishes, asked });
  if (before.finishes !== finishes || before.asked !== asked) {
    const old = before.asked === asked ? before.finishes[at] : undefined;
    setBefore({ finishes, asked });
    setAt(old === undefined ? 0 : Math.max(0, placeOf(finishes, refOf(old))));
  }
  return [Math.min(at, Math.max(0, finishes.length - 1)), setAt];
}

const placeOf = (finishes: readonly EmbeddedFinish[], ref: FinishRef | undefined): number =>
  ref === undefined ? -1 : finishes.findIndex((finish) => refOf(finish) === ref);

interface Grid {
  readonly columns: number;
  /** Rows in sight. */
  readonly high: number;
  readonly count: number;
  /** Written from right to left. */
  readonly isBackward: boolean;
}

/** Where a key leads from a place; undefined for a key that leads nowhere. */
function placeAfter(key: string, at: number, grid: Grid): number | undefined {
  const { columns, high, count, isBackward } = grid;
  const along = isBackward ? -1 : 1;
  const steps: Readonly<Record<string, number>> = {
    ArrowRight: along,
    ArrowLeft: -along,
    ArrowDown: columns,
    ArrowUp: -columns,
    PageDown: columns * high,
    PageUp: -columns * high,
    Home: -count,
    End: count,
  };
  const step = steps[key];
  return step === undefined ? undefined : Math.max(0, Math.min(count - 1, at + step));
}
