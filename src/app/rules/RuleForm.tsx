/** The form of a rule: what kind, the sentence with its blanks, and what it would do. */
import { useEffect, useId, useRef } from 'react';
import { addRule, mostRules, replaceRule } from '../../build/edit/rule.ts';
import { Choice } from '../pieces/Choice.tsx';
import { sayDone } from '../pieces/said.ts';
import { edit, endStep, useWork } from '../store.ts';
import { FinishBlank, FinishesBlank, PartBlank, TypedBlank } from './Blanks.tsx';
import { type Draft, kinds, ruleFrom, withPart } from './draft.ts';
import { fillIn, stopRuling, useRuling } from './ruling.ts';
import { Would } from './Would.tsx';

/** The form while a rule is being written; `onDone` hears where it stands then, from 0. */
export function RuleForm({ onDone }: { onDone: (at: number | undefined) => void }) {
  const { build } = useWork();
  const { draft, changing, begun } = useRuling();
  const form = useRef<HTMLFormElement>(null);
  const told = useId();
  useEffect(() => {
    // Each time it is begun, not only when it appears.
    if (begun === 0) return;
    const awaited = setTimeout(() => {
      form.current?.scrollIntoView({ block: 'nearest' });
      form.current?.querySelector<HTMLElement>('select, .blank, input:checked')?.focus();
    });
    return () => clearTimeout(awaited);
  }, [begun]);
  if (draft === undefined) return null;
  const filled = ruleFrom(draft);
  const rule = 'rule' in filled ? filled.rule : undefined;
  const at = changing === undefined ? build.rules.length : build.rules.indexOf(changing);
  const isFull = changing === undefined && build.rules.length >= mostRules;
  const put = (): void => {
    if (rule === undefined || isFull) return;
    endStep();
    edit((now) => (changing === undefined ? addRule(now, rule) : replaceRule(now, at, rule)));
    endStep();
    stopRuling();
    sayDone(changing === undefined ? `Rule ${at + 1} added.` : `Rule ${at + 1} changed.`);
    onDone(at);
  };
  const leave = (): void => {
    stopRuling();
    onDone(changing === undefined ? undefined : at);
  };
  const title = changing === undefined ? 'A new rule' : `Rule ${at + 1}`;
  return (
    <form
      ref={form}
      className="rule-form"
      aria-label={title}
      onSubmit={(event) => {
        event.preventDefault();
        put();
      }}
      onKeyDown={({ key }) => {
        if (key === 'Escape') leave();
      }}
    >
      <Choice
        legend={`${title} says that`}
        value={draft.kind}
        options={kinds.map(({ kind, says }) => ({ value: kind, name: says }))}
        onChoose={(kind) => fillIn((now) => ({ ...now, kind }))}
      />
      <div className="rule-blanks">
        <Blanks draft={draft} told={told} />
      </div>
      <div id={told} className="rule-would" role="status">
        {rule === undefined ? (
          <p className="quiet">Still to fill in: {'missing' in filled ? filled.missing : ''}.</p>
        ) : (
          <Would rule={rule} changing={changing} at={at} />
        )}
        {isFull ? <p>A build holds {mostRules} rules; take one out first.</p> : null}
      </div>
      <div className="buttons">
        <button
          type="submit"
          className="button button-strong"
          disabled={rule === undefined || isFull}
        >
          {changing === undefined ? 'Add this rule' : 'Change the rule'}
        </button>
        <button type="button" className="button" onClick={leave}>
          {changing === undefined ? 'Never mind' : 'Leave it as it was'}
        </button>
      </div>
    </form>
  );
}

/** The sentence of a kind with blanks in it. */
function Blanks({ draft, told }: { draft: Draft; told: string }) {
  const { build } = useWork();
  const { kind, parts, finishes, oneOf } = draft;
  const [first = '', second = ''] = parts;
  const part = (at: number, label: string, taken: readonly string[] = []) => (
    <PartBlank
      label={label}
      part={parts[at] ?? ''}
      taken={taken}
      onChoose={(id) => fillIn((now) => withPart(build, now, at, id))}
    />
  );
  const finish = (at: 0 | 1, label: string) => (
    <FinishBlank
      label={label}
      part={parts[at] ?? ''}
      finish={finishes[at]}
      onChoose={(ref) =>
        fillIn((now) => {
          const [one, other] = now.finishes;
          return { ...now, finishes: at === 0 ? [ref, other] : [one, ref] };
        })
      }
    />
  );
  const number = (field: 'bottles' | 'most' | 'percent', label: string) => (
    <TypedBlank
      label={label}
      kind="number"
      value={draft[field]}
      describedBy={told}
      onType={(text) => fillIn((now) => ({ ...now, [field]: text }))}
    />
  );
  switch (kind) {
    case 'same':
      return <SameBlanks draft={draft} />;
    case 'if-then':
      return (
        <>
          <p>
            With {part(0, 'First part')} in {finish(0, 'Finish of the first part')},{' '}
            {part(1, 'Second part', [first])} must wear one of these:
          </p>
          <FinishesBlank
            label="Finishes that the second part may wear then"
            part={second}
            chosen={oneOf}
            onChoose={(chosen) => fillIn((now) => ({ ...now, oneOf: chosen }))}
          />
        </>
      );
    case 'never-together':
      return (
        <p>
          {part(0, 'First part', [second])} in {finish(0, 'Finish of the first part')} must not meet{' '}
          {part(1, 'Second part', [first])} in {finish(1, 'Finish of the second part')}.
        </p>
      );
    case 'must-echo':
      return <p>The colour of {part(0, 'Part')} must show again in another zone.</p>;
    case 'most-share':
      return (
        <p>
          The colour of {part(0, 'Part')} may take at most {number('percent', 'Share, percent')} %
          of the visible car.
        </p>
      );
    case 'most-finishes':
      return <p>At most {number('most', 'Number of finishes')} finishes may be used.</p>;
    case 'most-new-bottles':
      return <p>At most {number('bottles', 'Number of bottles')} bottles may be bought.</p>;
    case 'ready-by':
      return (
        <p>
          Everything must be dry by{' '}
          <TypedBlank
            label="Date"
            kind="date"
            value={draft.date}
            describedBy={told}
            onType={(date) => fillIn((now) => ({ ...now, date }))}
          />
          .
        </p>
      );
  }
}

/** As many parts as one likes: whenever the last blank is filled in, another one follows. */
function SameBlanks({ draft }: { draft: Draft }) {
  const { build } = useWork();
  const filled = draft.parts.filter((part) => part !== '');
  const rows = [...draft.parts.filter((part, at) => part !== '' || at < 2)];
  if (rows.every((part) => part !== '')) rows.push('');
  // A blank is told from the others by its place.
  const blanks = rows.map((part, at) => ({ part, at, place: `blank ${at}` }));
  return (
    <p>
      {blanks.map(({ part, at, place }) => (
        <span key={place} className="same-part">
          {at === 0 ? '' : at === 1 ? 'must wear the same as ' : 'and '}
          <PartBlank
            label={`Part ${at + 1}`}
            part={part}
            empty={at < 2 ? 'a part …' : 'no further part'}
            taken={filled.filter((one) => one !== part)}
            onChoose={(id) => fillIn((now) => withPart(build, { ...now, parts: rows }, at, id))}
          />{' '}
        </span>
      ))}
    </p>
  );
}
