/** Under which lamps and from how far cars are looked at: what each is called on screen. */
import type { LightId } from '../../colour/illuminant.ts';

export const lights: readonly { value: LightId; name: string; note?: string }[] = [
  { value: 'D65', name: 'Daylight' },
  { value: 'A', name: 'Warm lamp' },
  { value: 'LED-B3', name: 'LED' },
  { value: 'D50', name: 'Warm daylight' },
  { value: 'FL11', name: 'Shop tube' },
];

/** Distances, mm. */
export const distances: readonly { value: number; name: string; note: string }[] = [
  { value: 400, name: 'Desk', note: '0.4 m' },
  { value: 800, name: 'Cabinet', note: '0.8 m' },
  { value: 1000, name: 'Table', note: '1 m' },
  { value: 2000, name: 'Show', note: '2 m' },
];

/** What a lamp is called. */
export const lightName = (light: LightId): string =>
  lights.find(({ value }) => value === light)?.name ?? light;

/** What a lamp is called within a sentence: `warm lamp`, but `LED`. */
export const lightWords = (light: LightId): string =>
  lightName(light).replace(/^[A-Z](?=[a-z])/, (first) => first.toLowerCase());
