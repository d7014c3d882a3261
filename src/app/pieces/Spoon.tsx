/**
 * The test spoon: every finish on the page is one. The bowl is sprayed, the handle carries the
 * label. Drawn as the back of a plastic teaspoon lying on the bench, lamp above and to the left.
 */
import { memo, useId } from 'react';
import type { EmbeddedFinish } from '../../build/build.ts';
import type { LightId } from '../../colour/illuminant.ts';
import { useBowlPicture } from '../live/spoons.ts';
import { kindOf, lookOf } from './look.ts';
import { materialOf } from './material.ts';

// Drawn in a box 104 × 48, of which 8 are 7 CSS pixels; the neck ends at its right edge, on whole
// pixels, where the handle takes over.
const bowl =
  'M2.5 24C2.5 12.4 14 5 29.5 5C45 5 60.5 13.2 60.5 24C60.5 34.8 45 43 29.5 43C14 43 2.5 35.6 2.5 24Z';
const neck =
  'M52 17C60 18.8 66 19.6 72 17.8C80 15.2 84 2.29 104 2.29V45.71C84 45.71 80 32.8 72 30.2C66 28.4 60 29.2 52 31Z';
const ridge = 'M61 23C70 21.8 81 21.5 96 21.1';
const lamp =
  'M10 21.5C11.5 13.8 19 9.3 29.5 9.4C36 9.5 42.5 11.3 46.5 14C39 12.9 29 13.4 22.5 16.4C17.5 18.7 14.5 21 10 21.5Z';
const bounce = 'M13 33.5C22 39.8 39 40.6 51.5 33C43.5 41.6 23 42.8 13 33.5Z';

/**
 * The sprayed bowl alone; decoration, so it has no name of its own. Dozens are on the page, so one
 * is drawn again only where its finish or the light has changed.
 */
export const Bowl = memo(function Bowl(props: { finish: EmbeddedFinish; light: LightId }) {
  const { finish, light } = props;
  const id = useId();
  const look = lookOf(finish, light);
  const picture = useBowlPicture(finish, light);
  const { face, middle, rim, lampBlur, lampOpacity, grain } = materialOf(finish, look);
  return (
    <svg className="bowl" viewBox="0 0 104 48" aria-hidden="true" focusable="false">
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
        {picture === undefined ? null : (
          <image href={picture} x="2.5" y="5" width="58" height="38" preserveAspectRatio="none" />
        )}
      </g>
      <path className={grain === 'fuzz' ? 'bowl-edge bowl-fuzz' : 'bowl-edge'} d={bowl} />
    </svg>
  );
});

interface SpoonProps {
  readonly finish: EmbeddedFinish;
  readonly light: LightId;
  /** What stands under the name; the kind of finish where nothing else is said. */
  readonly note?: string;
}

/** A finish as a sprayed test spoon with its label. */
export const Spoon = memo(function Spoon({ finish, light, note }: SpoonProps) {
  return (
    <span className="spoon">
      <Bowl finish={finish} light={light} />
      <span className="handle">
        <span className="handle-name" dir="auto">
          {finish.name}
        </span>
        <span className="handle-note">{note ?? kindOf(finish, lookOf(finish, light))}</span>
      </span>
    </span>
  );
});
