/**
 * The test spoon: every finish on the page is one. The bowl is sprayed, the handle carries the
 * label. Drawn as the back of a plastic teaspoon lying on the bench, lamp above and to the left.
 */
import { useId } from 'react';
import type { EmbeddedFinish } from '../../build/build.ts';
import type { LightId } from '../../colour/illuminant.ts';
import { kindOf, lookOf } from '../look.ts';
import { materialOf } from './material.ts';

// Drawn in a box 100 × 48; the neck ends at its right edge, where the handle takes over.
const bowl =
  'M2.5 24C2.5 11.8 13.5 4.5 28.5 4.5C42 4.5 51.5 11.2 57.8 19.4C60.4 22.8 60.4 25.2 57.8 28.6C51.5 36.8 42 43.5 28.5 43.5C13.5 43.5 2.5 36.2 2.5 24Z';
const neck =
  'M53 19.6C63 21.6 69 20.6 75 16.4C82 11.4 88 6.6 100 6V42C88 41.4 82 36.6 75 31.6C69 27.4 63 26.4 53 28.4Z';
const ridge = 'M59 24C70 23.4 80 23 97 22.6';
const lamp =
  'M10.5 21.5C11.5 13.5 19 8.6 29 8.9C35 9.1 40.5 11.3 43.8 14.2C37 12.6 27.5 13.2 21.5 16.4C17 18.8 14.5 21 10.5 21.5Z';
const bounce = 'M13 34C21 40.6 37 41.4 48.5 34.5C41 42.4 22 43.6 13 34Z';

/** The sprayed bowl alone; decoration, so it has no name of its own. */
export function Bowl({ finish, light }: { finish: EmbeddedFinish; light: LightId }) {
  const id = useId();
  const look = lookOf(finish, light);
  const { face, middle, rim, lampBlur, lampOpacity, grain } = materialOf(finish, look);
  return (
    <svg className="bowl" viewBox="0 0 100 48" aria-hidden="true" focusable="false">
      <defs>
        <radialGradient id={`${id}f`} cx="0.44" cy="0.4" r="0.64" fx="0.38" fy="0.26">
          <stop offset="0" stopColor={face} />
          <stop offset="0.4" stopColor={middle} />
          <stop offset="0.7" stopColor={middle} />
          <stop offset="1" stopColor={rim} />
        </radialGradient>
        <filter id={`${id}b`} x="-60%" y="-120%" width="220%" height="340%">
          <feGaussianBlur stdDeviation={lampBlur} />
        </filter>
        <clipPath id={`${id}c`}>
          <path d={bowl} />
        </clipPath>
      </defs>
      <ellipse className="bowl-shadow" cx="32" cy="42.6" rx="27" ry="4.4" />
      <path className="neck" d={neck} />
      <path className="ridge" d={ridge} />
      <path d={bowl} fill={`url(#${id}f)`} />
      <g clipPath={`url(#${id}c)`}>
        {grain === undefined ? null : <path d={bowl} fill={`url(#grain-${grain})`} />}
        <path d={bounce} fill="#fff" opacity={lampOpacity * 0.22} filter={`url(#${id}b)`} />
        <path d={lamp} fill="#fff" opacity={lampOpacity} filter={`url(#${id}b)`} />
      </g>
      <path className={grain === 'fuzz' ? 'bowl-edge bowl-fuzz' : 'bowl-edge'} d={bowl} />
    </svg>
  );
}

interface SpoonProps {
  readonly finish: EmbeddedFinish;
  readonly light: LightId;
  /** What stands under the name; the kind of finish where nothing else is said. */
  readonly note?: string;
}

/** A finish as a sprayed test spoon with its label. */
export function Spoon({ finish, light, note }: SpoonProps) {
  return (
    <span className="spoon">
      <Bowl finish={finish} light={light} />
      <span className="handle">
        <span className="handle-name">{finish.name}</span>
        <span className="handle-note">{note ?? kindOf(finish, lookOf(finish, light))}</span>
      </span>
    </span>
  );
}
