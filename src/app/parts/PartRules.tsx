/** The rules that speak of a part, and the way to another. */
import type { Part, Rule } from '../../build/build.ts';
import { namesIn, ruleSentence } from '../../build/rule.ts';
import { useWork } from '../store.ts';

/** Whether a rule names a part. */
function speaksOf(rule: Rule, part: string): boolean {
  switch (rule.kind) {
    case 'same':
      return rule.parts.includes(part);
    case 'if-then':
      return rule.when.part === part || rule.wants.part === part;
    case 'never-together':
      return rule.first.part === part || rule.second.part === part;
    case 'must-echo':
    case 'most-share':
      return rule.part === part;
    default:
      return false;
  }
}

/** Rules with this part, in sentences. */
export function PartRules({ part }: { part: Part }) {
  const { build } = useWork();
  const names = namesIn(build);
  const rules = build.rules.filter((rule) => speaksOf(rule, part.id));
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
    </section>
  );
}
