/**
 * How the cars are looked at: from where, at what size, with what pointed out, and which car stands
 * in for another for a moment. Kept out of the undo history.
 */
import { create } from 'zustand';
import type { Vector3 } from '../../ground/vector.ts';

/**
 * How far the live cars have come; drawings stand in until they are live, and where they cannot be:
 * `impossible` without WebGL 2, `unfetched` where code or car did not arrive.
 */
export type Liveness = 'drawn' | 'coming' | 'live' | 'lost' | 'impossible' | 'unfetched';

/** Steps of the camera for hands that have no wheel, no keys and no second finger. */
export interface Steer {
  /** Things are to look `factor` times as large. */
  readonly zoom: (factor: number) => void;
  /** Shows the whole car from the side one is on. */
  readonly stepBack: () => void;
}

/** What to look at closely: parts of the car, and of those the ones near a place, full-size mm. */
export interface Framed {
  readonly carParts: readonly string[];
  readonly near?: Vector3;
}

export interface Viewing {
  readonly liveness: Liveness;
  /** Id of the place the cars are seen from; `own` once the builder has turned them. */
  readonly place: string;
  /** Places there are to look from, once the car is there. */
  readonly places: readonly { readonly id: string; readonly name: string }[];
  /** The part to look at closely, as a fresh object each time it is asked for. */
  readonly framed: Framed | undefined;
  /** Undefined while there is no camera to steer. */
  readonly steer: Steer | undefined;
  /** Whether the cars have the size they would have to the eye at the viewing distance. */
  readonly isTrueSize: boolean;
  /** How many times larger than its place a car of true size is; 1 or less where it fits. */
  readonly overflow: number;
  /** Whether parts that differ between alternatives are marked. */
  readonly isMarking: boolean;
  /** An alternative shown in the place of another, or of all, while a key or button is held. */
  readonly standIn: { readonly shown: string; readonly at?: string } | undefined;
}

export const useViewing = create<Viewing>()(() => ({
  liveness: 'drawn',
  place: 'front',
  places: [],
  framed: undefined,
  steer: undefined,
  isTrueSize: false,
  overflow: 1,
  isMarking: false,
  standIn: undefined,
}));

/** Looks from a place. */
export const lookFrom = (place: string): void => useViewing.setState({ place, framed: undefined });

/** Looks closely at parts of the car, by their ids in its sight table. */
export const frame = (carParts: readonly string[], near?: Vector3): void =>
  useViewing.setState({
    place: 'own',
    framed: near === undefined ? { carParts } : { carParts, near },
  });

/** Shows one alternative in the place of another; without `at`, in every place. */
export function standIn(shown: string, at?: string): void {
  const now = useViewing.getState().standIn;
  if (now?.shown === shown && now.at === at) return;
  useViewing.setState({ standIn: at === undefined ? { shown } : { shown, at } });
}

/** Every alternative stands in its own place again. */
export const standDown = (): void => useViewing.setState({ standIn: undefined });

/** Id of the alternative that is shown in the place of `alternative` now. */
export const useShown = (alternative: string): string =>
  useViewing(({ standIn: now }) =>
    now !== undefined && (now.at === undefined || now.at === alternative) ? now.shown : alternative,
  );
