/**
 * By which day is the model wanted? A day as a date field hands it on while it is typed, `2031-05-24`
 * or nothing. A year comes figure by figure, 0002 before 2031, so years before 1900 are not taken
 * (our judgement: nobody plans a model for them). All that is typed in one go is one undo step.
 */
import { isRealDate } from '../../build/date.ts';
import { edit } from '../store.ts';

const firstDay = '1900-01-01';

const dayFault = (text: string): string | undefined => {
  if (!isRealDate(text)) return 'a day that the calendar has.';
  return text < firstDay ? 'a year from 1900 on.' : undefined;
};

/** Takes what was typed; nothing is no date. The answer says what is wrong with it, if anything. */
export function typeWanted(text: string): string | undefined {
  const fault = text === '' ? undefined : dayFault(text);
  if (fault !== undefined) return fault;
  edit(
    ({ wantedBy: _, ...rest }) => (text === '' ? rest : { ...rest, wantedBy: text }),
    'wanted by',
  );
  return undefined;
}
