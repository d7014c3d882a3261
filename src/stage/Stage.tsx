/**
 * The stage on the page: one canvas laid over all the places where cars stand, with fiber's root in
 * it. Knows nothing of builds: it is told what each car wears and where it stands.
 *
 * A canvas that the browser takes away (context loss) is reported, and drawn again once it is given
 * back.
 */
import { createRoot, type ReconcilerRoot } from '@react-three/fiber';
import { useEffect, useLayoutEffect, useRef } from 'react';
import { Scene, type SceneProps } from './Scene.tsx';

export interface StageProps extends SceneProps {
  /** This browser draws no 3D after all. */
  readonly onFailed: () => void;
  readonly onLost: () => void;
  readonly onFound: () => void;
}

type Root = ReconcilerRoot<HTMLCanvasElement>;

/** The canvas with the cars. */
export function Stage({ onFailed, onLost, onFound, ...scene }: StageProps) {
  const host = useRef<HTMLDivElement>(null);
  const root = useRef<{ readonly root: Root; readonly ready: Promise<unknown> }>(undefined);
  const told = useRef({ onFailed, onLost, onFound });
  told.current = { onFailed, onLost, onFound };

  useLayoutEffect(() => {
    // A root cannot be made twice on one canvas, so every mounting brings its own.
    const canvas = document.createElement('canvas');
    canvas.className = 'stage-canvas';
    canvas.setAttribute('aria-hidden', 'true');
    host.current?.append(canvas);
    const made = createRoot(canvas);
    const ready = made.configure({
      frameloop: 'demand',
      flat: true,
      linear: true,
      dpr: 1,
      size: { width: 1, height: 1, top: 0, left: 0 },
      gl: { antialias: false, alpha: true, powerPreference: 'high-performance' },
    });
    root.current = { root: made, ready };
    ready.catch(() => told.current.onFailed());
    const lost = (event: Event): void => {
      event.preventDefault();
      told.current.onLost();
    };
    const found = (): void => told.current.onFound();
    canvas.addEventListener('webglcontextlost', lost);
    canvas.addEventListener('webglcontextrestored', found);
    return () => {
      canvas.removeEventListener('webglcontextlost', lost);
      canvas.removeEventListener('webglcontextrestored', found);
      root.current = undefined;
      made.unmount();
      canvas.remove();
    };
  }, []);

  useEffect(() => {
    const now = root.current;
    if (now === undefined) return;
    void now.ready.then(() => {
      if (root.current === now) now.root.render(<Scene {...scene} />);
    });
  });

  return <div ref={host} className="stage-host" />;
}
