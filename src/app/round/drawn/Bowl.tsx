/** @jsxImportSource preact */
/** A sprayed bowl, as drawn on the bench before there are photographs; decoration without a name. */
import { useId } from 'preact/hooks';
import type { EmbeddedFinish } from '../../../build/build.ts';
import type { LightId } from '../../../colour/illuminant.ts';
import { bounce, bowl, lamp, neck, ridge } from '../../pieces/drawn/bowl.ts';
import { lookOf } from '../../pieces/look.ts';
import { materialOf } from '../../pieces/material.ts';

/** The bowl and neck of a spoon, sprayed with a finish and seen by a light. */
export function Bowl({ finish, light }: { finish: EmbeddedFinish; light: LightId }) {
  const id = useId();
  const { face, middle, rim, lampBlur, lampOpacity, grain } = materialOf(
    finish,
    lookOf(finish, light),
  );
  return (
    <svg class="bowl" viewBox="0 0 104 48" aria-hidden="true" focusable="false">
      <defs>
        <radialGradient id={`${id}f`} cx="0.44" cy="0.4" r="0.64" fx="0.38" fy="0.26">
          <stop offset="0" stop-color={face} />
          <stop offset="0.4" stop-color={middle} />
          <stop offset="0.7" stop-color={middle} />
          <stop offset="1" stop-color={rim} />
        </radialGradient>
        <filter id={`${id}b`} x="-60%" y="-120%" width="220%" height="340%">
          <feGaussianBlur stdDeviation={lampBlur} />
        </filter>
        <clipPath id={`${id}c`}>
          <path d={bowl} />
        </clipPath>
      </defs>
      <ellipse class="bowl-shadow" cx="32" cy="42.6" rx="27" ry="4.4" />
      <path class="neck-shadow" d={neck} />
      <path class="neck" d={neck} />
      <path class="ridge" d={ridge} />
      <path d={bowl} fill={`url(#${id}f)`} />
      {grain === undefined ? null : <path d={bowl} fill={`url(#grain-${grain})`} />}
      <g clip-path={`url(#${id}c)`} filter={`url(#${id}b)`} fill="#fff">
        <path d={bounce} fill-opacity={lampOpacity * 0.22} />
        <path d={lamp} fill-opacity={lampOpacity} />
      </g>
      <path class={grain === 'fuzz' ? 'bowl-edge bowl-fuzz' : 'bowl-edge'} d={bowl} />
    </svg>
  );
}
