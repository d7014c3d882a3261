/**
 * A component that is fetched when it is first shown. What cannot be fetched, without a network or
 * after the page has been put up anew, says so in its own place and can be tried again; the rest of
 * the page, and the work, stay as they are.
 */
import { type ComponentType, type ReactNode, useEffect, useState } from 'react';

interface Waiting {
  /** Stands there until it has come. */
  readonly meanwhile?: string;
  /** For a dialog: takes it away when it is given up. Its words then lie over the page. */
  readonly onGiveUp?: () => void;
}

/** What is fetched, and what of it has come. */
interface Source<Props> extends Waiting {
  readonly name: string;
  readonly fetch: () => Promise<ComponentType<Props>>;
  brought: ComponentType<Props> | undefined;
}

/** `name` begins the sentence that it could not be fetched: `The rack`. */
export function later<Props extends object>(
  name: string,
  fetch: () => Promise<ComponentType<Props>>,
  waiting: Waiting = {},
): (props: Props) => ReactNode {
  const source: Source<Props> = { ...waiting, name, fetch, brought: undefined };
  return (props) => <Later source={source} props={props} />;
}

function Later<Props extends object>({ source, props }: { source: Source<Props>; props: Props }) {
  const { name, meanwhile, onGiveUp } = source;
  const [state, setState] = useState<'coming' | 'here' | 'missing'>('coming');
  useEffect(() => {
    if (state !== 'coming' || source.brought !== undefined) return;
    let isWanted = true;
    const tell = (now: 'here' | 'missing'): void => {
      if (isWanted) setState(now);
    };
    source.fetch().then(
      (component) => {
        source.brought = component;
        tell('here');
      },
      () => tell('missing'),
    );
    return () => {
      isWanted = false;
    };
  }, [source, state]);
  const Brought = source.brought;
  if (Brought !== undefined) return <Brought {...props} />;
  if (state === 'missing') {
    return <Missing name={name} onAgain={() => setState('coming')} onGiveUp={onGiveUp} />;
  }
  return meanwhile === undefined ? null : <p className="waiting">{meanwhile}</p>;
}

interface MissingProps {
  readonly name: string;
  readonly onAgain: () => void;
  readonly onGiveUp: (() => void) | undefined;
}

function Missing({ name, onAgain, onGiveUp }: MissingProps) {
  return (
    <div className={onGiveUp === undefined ? 'missing' : 'missing missing-over'} role="alert">
      <p>
        {name} could not be fetched. Nothing is lost; where trying again does not help, save a file
        and reload the page.
      </p>
      <div className="buttons">
        <button type="button" className="button" onClick={onAgain}>
          Try again
        </button>
        {onGiveUp === undefined ? null : (
          <button type="button" className="button" onClick={onGiveUp}>
            Never mind
          </button>
        )}
      </div>
    </div>
  );
}
