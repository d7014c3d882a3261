/** Brings the live cars of the open work, laid over the drawings that stand in for them. */
import type { RefObject } from 'react';
import { useWork } from '../store.ts';
import { useArrived } from './canvas/arrived.ts';

interface LiveProps {
  readonly within: RefObject<HTMLElement | null>;
}

const load = async () => (await import('./LiveCars.tsx')).LiveCars;

/** The live cars, once they are there. */
export function Live({ within }: LiveProps) {
  const { car, build } = useWork();
  const arrived = useArrived(car, build, load);
  return arrived === undefined ? null : <arrived.Cars mesh={arrived.mesh} within={within} />;
}
