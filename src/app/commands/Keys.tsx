/** Every key the page knows, by where it counts. */
import { scrollable } from '../pieces/scrollable.ts';
import { keyGroups } from './keys.ts';

/** Lists of keys. */
export const Keys = () => (
  <div className="keys" {...scrollable('Every key')}>
    {keyGroups.map(({ where, keys }) => (
      <section key={where}>
        <h3>{where}</h3>
        <dl>
          {keys.map((one) => (
            <div key={one.does}>
              <dt>
                {one.keys.map((name) => (
                  <kbd key={name}>{name}</kbd>
                ))}
              </dt>
              <dd>{one.does}</dd>
            </div>
          ))}
        </dl>
      </section>
    ))}
    <p className="quiet">The letters can be switched off under the cars.</p>
  </div>
);
