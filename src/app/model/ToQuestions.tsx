/** Where the questions lie far beneath the cars, as on a phone: a line under the cars that leads there. */
import { useWork } from '../store.ts';
import { useDone } from './done.ts';
import './questions.css';

/** The line; nothing once all is answered, or put away. */
export function ToQuestions() {
  const { done, isAway } = useDone(useWork());
  if (isAway || done === 3) return null;
  const go = (): void => {
    const questions = document.querySelector<HTMLElement>('.questions');
    questions?.scrollIntoView({ block: 'start' });
    questions?.querySelector('summary')?.focus({ preventScroll: true });
  };
  return (
    <p className="to-questions">
      <button type="button" className="button" onClick={go}>
        Three questions to a comparison: {done} of 3 answered
      </button>
    </p>
  );
}
