/**
 * What if the page itself fails over some work? It says so and offers the demo, so that nobody is
 * locked out by what they opened. Work that was kept stays among the builds.
 */
import { Component, type ReactNode } from 'react';
import { rememberOpen } from './keeping/pointer.ts';

interface BoundaryState {
  readonly reason: string | undefined;
}

function startAfresh(): void {
  rememberOpen(undefined);
  location.reload();
}

/** Stands around the bench; shows a way out where drawing it fails. */
export class Boundary extends Component<{ children: ReactNode }, BoundaryState> {
  override state: BoundaryState = { reason: undefined };

  static getDerivedStateFromError(error: unknown): BoundaryState {
    return { reason: error instanceof Error ? error.message : String(error) };
  }

  override render(): ReactNode {
    const { reason } = this.state;
    if (reason === undefined) return this.props.children;
    return (
      <div className="waiting" role="alert">
        <p>The bench could not be laid out with this work: {reason.slice(0, 300)}</p>
        <p>
          <button type="button" className="button" onClick={() => location.reload()}>
            Go back to what was kept last
          </button>{' '}
          <button type="button" className="button" onClick={startAfresh}>
            Open the demo instead
          </button>
        </p>
      </div>
    );
  }
}
