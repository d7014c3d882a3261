/**
 * The finishes of a car as flat swatches, in their colour as scored: a shiny surface shows the room
 * as much as its paint. Also the car in words, for who cannot see it.
 */
import { memo } from 'react';
import type { Alternative } from '../../../build/build.ts';
import type { LightId } from '../../../colour/illuminant.ts';
import type { Finish } from '../../../finish/finish.ts';
import { kindOf, lookOf } from '../../pieces/look.ts';
import { pointAt } from '../../pointing.ts';
import { useBench } from '../../store.ts';
import { wearOf } from './worn.ts';

/** A flat square of a finish; decoration, its name stands beside it. */
export const Swatch = ({ finish, light }: { finish: Finish; light: LightId }) => (
  <span className="swatch" style={{ background: lookOf(finish, light).hex }} aria-hidden="true" />
);

interface WornProps {
  readonly alternative: Alternative;
  readonly letter: string;
}

/** Every finish and the parts that wear it, the largest first; drawn again only where it changed. */
export const Worn = memo(function Worn({ alternative, letter }: WornProps) {
  const parts = useBench(({ work }) => work!.build.parts);
  const finishes = useBench(({ work }) => work!.build.finishes);
  const light = useBench(({ work }) => work!.build.viewing.light);
  const sight = useBench(({ work }) => work!.car.sight);
  return (
    <ul className="worn" aria-label={`Finishes of ${letter}, the largest first`}>
      {wearOf({ parts, finishes }, alternative, sight).map(({ finish, parts: wearing, mm2 }) => {
        const names = wearing.map(({ name }) => name).join(', ');
        return (
          <li
            key={`${finish.rack}/${finish.id}`}
            // As wide as it shows on the car, drawn together so that a thread is still seen.
            style={{ flexGrow: Math.sqrt(mm2) }}
            title={`${finish.name}: ${names}`}
            onPointerEnter={() => pointAt(wearing.map(({ id }) => id))}
            onPointerLeave={() => pointAt([])}
          >
            <Swatch finish={finish} light={light} />
            <span className="unseen">
              {finish.name}, {kindOf(finish, lookOf(finish, light))}: {names}
            </span>
          </li>
        );
      })}
    </ul>
  );
});
