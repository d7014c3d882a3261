/**
 * A dialog over the page, native, so that Escape closes it and the focus goes back to what opened
 * it. A press beside it closes it too, unless the press began inside.
 */
import { type ReactNode, useEffect, useId, useRef } from 'react';

interface DialogProps {
  readonly title: string;
  /** `side`: along the edge, so that the cars stay in sight; `middle`: over the page. */
  readonly place?: 'side' | 'middle';
  readonly className?: string;
  readonly onClose: () => void;
  /** What stands beside the way out, for example a button that takes everything back. */
  readonly tools?: ReactNode;
  /** Words on the way out. */
  readonly closing?: string;
  readonly children: ReactNode;
}

/**
 * On a phone, where a dialog at the side is a sheet at the foot, the page moves until the cars stand
 * above it. The answer moves the page back.
 */
function keepCarsInSight(): (() => void) | undefined {
  const { scrollX, scrollY } = window;
  if (!window.matchMedia('(max-width: 40em)').matches) return undefined;
  document.querySelector('.cars')?.scrollIntoView({ block: 'start', inline: 'nearest' });
  return () => window.scrollTo(scrollX, scrollY);
}

/** How many panels lie along the edge; the stage leaves them room. A style asks the root for it. */
let panels = 0;
function layAlongEdge(): () => void {
  const tell = (): boolean => document.documentElement.toggleAttribute('data-beside', panels > 0);
  panels++;
  tell();
  return () => {
    panels--;
    tell();
  };
}

/** Shown as long as it is rendered; `onClose` is asked to take it away. */
export function Dialog(props: DialogProps) {
  const { title, place = 'middle', className = '', onClose, tools, closing = 'Done' } = props;
  const dialog = useRef<HTMLDialogElement>(null);
  const titleId = useId();
  useEffect(() => {
    const element = dialog.current;
    if (element === null) return;
    const before = document.activeElement;
    if (!element.open) element.showModal();
    const leaveEdge = place === 'side' ? layAlongEdge() : undefined;
    const backToPlace = place === 'side' ? keepCarsInSight() : undefined;
    let hasBegun = false;
    const begin = ({ target }: Event): void => {
      hasBegun = target === element;
    };
    const press = ({ target }: Event): void => {
      if (target === element && hasBegun) element.close();
      hasBegun = false;
    };
    element.addEventListener('pointerdown', begin);
    element.addEventListener('click', press);
    return () => {
      element.removeEventListener('pointerdown', begin);
      element.removeEventListener('click', press);
      leaveEdge?.();
      backToPlace?.();
      // Taken away while open, it would leave the focus on nothing.
      if (element.open && before instanceof HTMLElement) before.focus();
    };
  }, [place]);
  return (
    <dialog
      ref={dialog}
      className={`dialog dialog-${place} ${className}`}
      aria-labelledby={titleId}
      onClose={onClose}
    >
      <div className="dialog-inside">
        <header className="dialog-head">
          <h2 id={titleId}>{title}</h2>
          <div className="dialog-tools">
            {tools}
            <button type="button" className="button" onClick={() => dialog.current?.close()}>
              {closing}
            </button>
          </div>
        </header>
        {props.children}
      </div>
    </dialog>
  );
}
