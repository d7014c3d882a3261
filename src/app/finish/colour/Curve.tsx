/** The reflectance of a colour over the visible range, as a plain curve; dashed where it was lifted. */
import { bandsNm } from '../../../colour/spectrum.ts';
import { reflectanceOf } from '../../../finish/colour.ts';
import type { Colour } from '../../../finish/finish.ts';

const [width, height] = [320, 96];
const [fromNm, toNm] = [400, 700];
const percents = [0, 50, 100];
const wavelengths = [400, 500, 600, 700];

/** Curve with its axes; what it says in words goes with it. */
export function Curve({ colour }: { colour: Colour }) {
  const { reflectance, isMeasured } = reflectanceOf(colour);
  const highest = Math.max(1, ...reflectance);
  const x = (nm: number): number => ((nm - fromNm) / (toNm - fromNm)) * width;
  const y = (value: number): number => height - (value / highest) * height;
  const points = bandsNm.flatMap((nm, band) =>
    nm < fromNm || nm > toNm ? [] : [`${x(nm).toFixed(1)} ${y(reflectance[band]!).toFixed(1)}`],
  );
  const at = (nm: number): string =>
    `${Math.round(100 * reflectance[bandsNm.indexOf(nm)]!)} % at ${nm} nm`;
  return (
    <figure className="curve">
      <svg
        viewBox={`-34 -6 ${width + 56} ${height + 26}`}
        role="img"
        aria-label={`Reflectance: ${wavelengths.map(at).join(', ')}`}
      >
        {percents.map((percent) => (
          <g key={percent}>
            <path className="curve-grid" d={`M0 ${y(percent / 100)}H${width}`} />
            <text x="-6" y={y(percent / 100) + 3.5} textAnchor="end">
              {percent} %
            </text>
          </g>
        ))}
        {wavelengths.map((nm) => (
          <text key={nm} x={x(nm)} y={height + 16} textAnchor="middle">
            {nm === toNm ? `${nm} nm` : nm}
          </text>
        ))}
        <path
          className={isMeasured ? 'curve-line' : 'curve-line curve-lifted'}
          d={`M${points.join('L')}`}
        />
      </svg>
      <figcaption>
        {isMeasured
          ? 'As measured: other lamps and tinted coats are worked out from it.'
          : 'Nothing was measured: one smooth curve of many that have this colour.'}
      </figcaption>
    </figure>
  );
}
