/** A finish on paper: a square of its colour with its name beside it. */
import type { LightId } from '../../colour/illuminant.ts';
import type { Finish } from '../../finish/finish.ts';
import { kindOf, lookOf } from '../pieces/look.ts';

interface MarkProps {
  readonly finish: Finish;
  readonly light: LightId;
  /** Whether its kind and sheen are told too. */
  readonly hasKind?: boolean;
}

/** The square is printed in colour even where a browser would save ink. */
export function Mark({ finish, light, hasKind = false }: MarkProps) {
  const look = lookOf(finish, light);
  return (
    <span className="paper-mark">
      <span className="paper-square" style={{ background: look.hex }} />
      <span>
        <bdi>{finish.name}</bdi>
        {hasKind ? <small>{kindOf(finish, look)}</small> : null}
      </span>
    </span>
  );
}
