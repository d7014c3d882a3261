/**
 * What is fetched to show a round: the car's sight table and one view of it, once for all
 * alternatives. Until it has come, and where it never comes, the words stand alone.
 */
import { useCallback, useEffect, useState } from 'preact/hooks';
import type { Round } from '../../opinion/round.ts';
import { type Car, carFrom } from '../opening/garage.ts';
import { viewFor } from './view.ts';

export interface Scene {
  readonly state: 'coming' | 'here' | 'missing';
  /** The car with the one view that is shown, once it is here. */
  readonly car: Car | undefined;
  /** Fetches again what could not be fetched. */
  readonly again: () => void;
}

/** The scene of a round, fetched as soon as this is shown. */
export function useScene(round: Round): Scene {
  const [{ state, car }, setScene] = useState<Omit<Scene, 'again'>>(coming);
  useEffect(() => {
    if (state !== 'coming') return;
    let isWanted = true;
    carFrom(round.build.car, { views: (sight) => [viewFor(round, sight)] }).then(
      (found) => {
        if (!isWanted) return;
        setScene(found.views.length > 0 ? { state: 'here', car: found } : missing);
      },
      () => {
        if (isWanted) setScene(missing);
      },
    );
    return () => {
      isWanted = false;
    };
  }, [round, state]);
  const again = useCallback(() => setScene(coming), []);
  return { state, car, again };
}

const coming = { state: 'coming', car: undefined } as const;
const missing = { state: 'missing', car: undefined } as const;
