/**
 * The test spoon: every finish on the page is one. The bowl is sprayed, the handle carries the
 * label.
 */
import { memo, useId } from 'react';
import type { EmbeddedFinish } from '../../build/build.ts';
import type { LightId } from '../../colour/illuminant.ts';
import { useBowlPicture } from '../live/spoons.ts';
import { bounce, bowl, lamp, neck, ridge } from './drawn/bowl.ts';
import { kindOf, lookOf } from './look.ts';
import { materialOf } from './material.ts';

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
      <path className="neck-shadow" d={neck} />
      <path className="neck" d={neck} />
      <path className="ridge" d={ridge} />
      <path d={bowl} fill={`url(#${id}f)`} />
      {grain === undefined ? null : <path d={bowl} fill={`url(#grain-${grain})`} />}
      <g clipPath={`url(#${id}c)`} filter={`url(#${id}b)`} fill="#fff">
        <path d={bounce} fillOpacity={lampOpacity * 0.22} />
        <path d={lamp} fillOpacity={lampOpacity} />
      </g>
      {picture === undefined ? null : (
        <image
          href={picture}
          x="2.5"
          y="5"
          width="58"
          height="38"
          preserveAspectRatio="none"
          clipPath={`url(#${id}c)`}
        />
      )}
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
