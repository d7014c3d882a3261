/**
 * The finishes of a car as flat swatches, in their colour as scored: a shiny surface shows the room
 * as much as its paint. Also the car in words, for who cannot see it.
 */
import { useMemo } from 'react';
import type { Alternative } from '../../../build/build.ts';
import type { LightId } from '../../../colour/illuminant.ts';
import type { Finish } from '../../../finish/finish.ts';
import { kindOf, lookOf } from '../../pieces/look.ts';
import { pointAt } from '../../pointing.ts';
import { useWork } from '../../store.ts';
import { wearOf } from './worn.ts';

/** A flat square of a finish; decoration, its name stands beside it. */
export const Swatch = ({ finish, light }: { finish: Finish; light: LightId }) => (
  <span className="swatch" style={{ background: lookOf(finish, light).hex }} aria-hidden="true" />
);

/** Every finish and the parts that wear it, the largest first. */
export function Worn({ alternative, letter }: { alternative: Alternative; letter: string }) {
  const { build, car } = useWork();
  const { light } = build.viewing;
  const worn = useMemo(() => wearOf(build, alternative, car.sight), [build, alternative, car]);
  return (
    <ul className="worn" aria-label={`Finishes of ${letter}, the largest first`}>
      {worn.map(({ finish, parts, mm2 }) => {
        const names = parts.map(({ name }) => name).join(', ');
        return (
          <li
            key={`${finish.rack}/${finish.id}`}
            // As wide as it shows on the car, drawn together so that a thread is still seen.
            style={{ flexGrow: Math.sqrt(mm2) }}
            title={`${finish.name}: ${names}`}
            onPointerEnter={() => pointAt(parts.map(({ id }) => id))}
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
}
