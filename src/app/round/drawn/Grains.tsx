/** @jsxImportSource preact */
/**
 * The grains that spoons share, drawn once per page: flake, pearl, weave, fuzz, leather, brushed
 * metal.
 */
import {
  creases,
  flake,
  hairs,
  pearl,
  round,
  type Speck,
  tile,
} from '../../pieces/drawn/specks.ts';

const Specks = ({ specks, strength }: { specks: readonly Speck[]; strength: number }) =>
  specks.map(({ x, y, radius, opacity, isBright }) => (
    <circle
      key={`${x} ${y}`}
      cx={x}
      cy={y}
      r={radius}
      fill={isBright ? '#fff' : '#000'}
      opacity={round(opacity * strength * (isBright ? 1 : 0.35))}
    />
  ));

/** Hidden drawing that holds the patterns; placed once in the page. */
export function Grains() {
  const whole = { width: tile, height: tile, patternUnits: 'userSpaceOnUse' } as const;
  return (
    <svg class="grains" width="0" height="0" aria-hidden="true" focusable="false">
      <defs>
        <pattern id="grain-flake" {...whole}>
          <Specks specks={flake} strength={0.95} />
        </pattern>
        <pattern id="grain-pearl" {...whole}>
          <Specks specks={pearl} strength={0.5} />
        </pattern>
        <pattern id="grain-weave" width="4" height="4" patternUnits="userSpaceOnUse">
          <path d="M0 1h2M2 3h2" stroke="#fff" stroke-opacity="0.22" stroke-width="1.3" />
          <path d="M0 3h2M2 1h2" stroke="#000" stroke-opacity="0.25" stroke-width="1.3" />
        </pattern>
        <pattern id="grain-fuzz" {...whole}>
          {hairs.map(({ x, y, radius, opacity, isBright }) => (
            <path
              key={`${x} ${y}`}
              d={`M${x} ${y}l${round(radius * 2 - 0.8)} ${round(-1.1 - radius)}`}
              stroke={isBright ? '#fff' : '#000'}
              stroke-width="0.4"
              opacity={round(opacity * (isBright ? 0.38 : 0.5))}
            />
          ))}
        </pattern>
        <pattern id="grain-leather" {...whole}>
          {creases.map(({ x, y, radius, opacity }) => (
            <path
              key={`${x} ${y}`}
              d={`M${x} ${y}q${round(radius)} ${round(-radius)} ${round(2 * radius)} ${round(radius - 0.4)}`}
              fill="none"
              stroke="#000"
              stroke-width="0.5"
              opacity={round(opacity * 0.55)}
            />
          ))}
        </pattern>
        <pattern id="grain-brushed" width={tile} height="3" patternUnits="userSpaceOnUse">
          <path d="M0 0.6h24" stroke="#fff" stroke-opacity="0.25" stroke-width="0.5" />
          <path d="M0 1.9h24" stroke="#000" stroke-opacity="0.14" stroke-width="0.5" />
        </pattern>
      </defs>
    </svg>
  );
}
