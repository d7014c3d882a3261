/**
 * Which builds want no more help on their way, and on which nothing is painted yet? By the keys of
 * the work, remembered in this browser where it lets us.
 */
import { create } from 'zustand';

interface Answered {
  /** Work whose three questions were put away. */
  readonly away: readonly string[];
  /** Work on which nothing is painted yet, as its builder said. */
  readonly bare: readonly string[];
}

const place = 'testspoon.questions';
/** Builds remembered; older ones are forgotten. */
const most = 50;

const isTexts = (value: unknown): value is string[] =>
  Array.isArray(value) && value.every((one) => typeof one === 'string');

function remembered(): Answered {
  try {
    const { away, bare } = JSON.parse(localStorage.getItem(place) ?? '{}') as Record<
      string,
      unknown
    >;
    return { away: isTexts(away) ? away : [], bare: isTexts(bare) ? bare : [] };
  } catch {
    return { away: [], bare: [] };
  }
}

export const useAnswered = create<Answered>()(remembered);

/** Notes an answer for the work with this key. */
export function answer(as: keyof Answered, key: string): void {
  useAnswered.setState((now) => ({
    [as]: [...now[as].filter((one) => one !== key), key].slice(-most),
  }));
  try {
    localStorage.setItem(place, JSON.stringify(useAnswered.getState()));
  } catch {
    // Without storage the answer holds until the page is left.
  }
}
