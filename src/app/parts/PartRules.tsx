/** The rules that speak of a part, and the way to another. */
import type { Part } from '../../build/build.ts';
import { namesIn, partsNamed, ruleSentence } from '../../build/rule.ts';
import { startRule } from '../rules/ruling.ts';
import { useWork } from '../store.ts';

/** Rules with this part, in sentences. */
export function PartRules({ part }: { part: Part }) {
  const { build } = useWork();
  const names = namesIn(build);
  const rules = build.rules.filter((rule) => partsNamed(rule).includes(part.id));
  return (
    <section className="card-part" aria-labelledby="card-rules">
      <h3 id="card-rules">Rules with it</h3>
      {rules.length === 0 ? (
        <p className="quiet">No rule speaks of this part.</p>
      ) : (
        <ul>
          {rules.map((rule) => (
            <li key={JSON.stringify(rule)}>{ruleSentence(rule, names)}.</li>
          ))}
        </ul>
      )}
      <button type="button" className="button" onClick={() => startRule({ part: part.id })}>
        Rule with this part…
      </button>
    </section>
  );
}
