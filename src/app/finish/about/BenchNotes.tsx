/**
 * What is to be minded when this is sprayed? How the films get along, how long each sort of paint is
 * usually left alone, and the usual cautions; the product's own data sheet comes before all of it.
 */
import { cautionsOf, type Layering } from '../../../finish/chemistry.ts';
import { cureOf } from '../../../finish/cure.ts';
import { isPaint } from '../../../finish/edit/effect.ts';
import { chemistriesOf, type Layer, layersOf } from '../../../finish/edit/layer.ts';
import type { Live } from '../live.ts';
import { chemistryNames, spanOf } from '../words.ts';

const verdicts: Readonly<Record<Layering['verdict'], string>> = {
  usual: 'usual',
  'with care': 'with care',
  avoid: 'better avoided',
};
const surety: Readonly<Record<Layering['confidence'], string>> = {
  A: '',
  B: ' Usual experience.',
  C: ' Thin evidence.',
};

/** Layering, waits and cautions of the films as they stand. */
export function BenchNotes({ live: { finish } }: { live: Live }) {
  if (!isPaint(finish)) return null;
  const layers = layersOf(finish);
  const sorts = chemistriesOf(finish).filter((sort) => sort !== 'none');
  const cautions = [...new Set((sorts.length > 0 ? sorts : ['none' as const]).flatMap(cautionsOf))];
  return (
    <section className="editor-section">
      <h3>At the bench</h3>
      {layers.length < 2 ? null : (
        <ol className="layers" aria-label="Films in the order they go on">
          {layers.map((layer) => (
            <LayerLine key={layer.place} layer={layer} />
          ))}
        </ol>
      )}
      {sorts.length === 0 ? (
        <p>Say which chemistry the paint is of, and the usual waits stand here.</p>
      ) : (
        <div className="waits">
          <table>
            <caption>
              Usual waits at 20–23 °C, as hobby pages give them; the product’s data sheet comes
              first
            </caption>
            <thead>
              <tr>
                <th scope="col">Paint</th>
                <th scope="col">Next coat</th>
                <th scope="col">Handle</th>
                <th scope="col">Mask</th>
                <th scope="col">Sand, polish</th>
              </tr>
            </thead>
            <tbody>
              {sorts.map((sort) => {
                const { betweenCoatsMinutes, handleHours, maskHours, cureDays } = cureOf(sort);
                return (
                  <tr key={sort}>
                    <th scope="row">{chemistryNames[sort]}</th>
                    <td>{spanOf(betweenCoatsMinutes, 'min')}</td>
                    <td>{spanOf(handleHours, 'h')}</td>
                    <td>{spanOf(maskHours, 'h')}</td>
                    <td>{spanOf(cureDays, 'days')}</td>
                  </tr>
                );
              })}
            </tbody>
          </table>
        </div>
      )}
      <ul className="traps">
        {sorts.map((sort) => (
          <li key={sort}>
            <strong>{chemistryNames[sort]}.</strong> {cureOf(sort).recoatTrap}
          </li>
        ))}
      </ul>
      <div className="cautions">
        <h4>Mind</h4>
        <ul>
          {cautions.map((caution) => (
            <li key={caution}>{caution}</li>
          ))}
        </ul>
      </div>
    </section>
  );
}

const LayerLine = ({ layer: { name, chemistry, coats, over } }: { layer: Layer }) => (
  <li>
    <strong>{name}</strong>, {chemistryNames[chemistry].toLowerCase()},{' '}
    {coats === 1 ? 'one coat' : `${coats} coats`}
    {over === undefined ? (
      ''
    ) : (
      <span className="layer-verdict">
        on what lies beneath: <em>{verdicts[over.verdict]}.</em> {over.note}
        {surety[over.confidence]}
      </span>
    )}
  </li>
);
