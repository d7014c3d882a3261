/** A button that adds an alternative: like one of those there are, or plain. */
import { useEffect, useRef } from 'react';
import { letterOf } from '../../build/build.ts';
import { useWork } from '../store.ts';

const add = (like?: string): void => {
  void import('./moving.ts').then((moving) => moving.add(like));
};

/** More than these are copied from their own cards. */
const mostNamed = 6;

/** The list goes up where the window has no room beneath the button, and comes into sight. */
function place(menu: HTMLDetailsElement): void {
  delete menu.dataset.up;
  const list = menu.querySelector('ul');
  if (!menu.open || list === null) return;
  const { bottom, height } = list.getBoundingClientRect();
  const { top } = menu.getBoundingClientRect();
  if (bottom > window.innerHeight && top > height) menu.dataset.up = '';
  list.scrollIntoView({ block: 'nearest', inline: 'nearest' });
}

/** “Add an alternative”, with a short list of what it is to be like. */
export function AddAlternative() {
  const { alternatives } = useWork().build;
  const menu = useRef<HTMLDetailsElement>(null);
  useEffect(() => {
    const element = menu.current;
    const shut = (): void => {
      if (element !== null) element.open = false;
    };
    const beside = ({ target }: Event): void => {
      if (element?.open && target instanceof Node && !element.contains(target)) shut();
    };
    const onKey = ({ key }: KeyboardEvent): void => {
      if (key !== 'Escape' || !element?.open) return;
      shut();
      element.querySelector('summary')?.focus();
    };
    document.addEventListener('pointerdown', beside);
    document.addEventListener('focusin', beside);
    element?.addEventListener('keydown', onKey);
    return () => {
      document.removeEventListener('pointerdown', beside);
      document.removeEventListener('focusin', beside);
      element?.removeEventListener('keydown', onKey);
    };
  }, []);
  if (alternatives.length === 0) {
    return (
      <button type="button" className="button" onClick={() => add()}>
        Add an alternative
      </button>
    );
  }
  const choose = (like?: string): void => {
    if (menu.current !== null) menu.current.open = false;
    add(like);
  };
  return (
    <details ref={menu} className="menu" onToggle={({ currentTarget }) => place(currentTarget)}>
      <summary className="button">Add an alternative</summary>
      <ul>
        {alternatives.slice(0, mostNamed).map(({ id, name }, at) => (
          <li key={id}>
            <button type="button" onClick={() => choose(id)}>
              like <strong>{letterOf(at)}</strong> <span className="quiet">{name}</span>
            </button>
          </li>
        ))}
        <li>
          <button type="button" onClick={() => choose()}>
            plain <span className="quiet">every open part in its first candidate</span>
          </button>
        </li>
      </ul>
    </details>
  );
}
