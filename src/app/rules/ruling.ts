/**
 * Which rule is being written? A new one or a change to one that stands; kept out of the undo
 * history, which holds only rules that were put in place.
 */
import { create } from 'zustand';
import type { Rule } from '../../build/build.ts';
import { goTo } from '../area.ts';
import { clear } from '../overlay/overlay.ts';
import { useBench } from '../store.ts';
import { type Draft, draftOf, draftOver, freshDraft } from './draft.ts';

interface Ruling {
  readonly draft: Draft | undefined;
  /** The rule that is being changed; undefined while a new one is written. */
  readonly changing: Rule | undefined;
  /** How often writing was begun, so that each time the form is looked at anew. */
  readonly begun: number;
}

export const useRuling = create<Ruling>()(() => ({
  draft: undefined,
  changing: undefined,
  begun: 0,
}));

function begin(draft: Draft, changing: Rule | undefined): void {
  useRuling.setState(({ begun }) => ({ draft, changing, begun: begun + 1 }));
}

/**
 * Opens the form for a new rule, on the bench and with no dialog over it; with a part of the build
 * already in its first blank where one is given by its id.
 */
export function startRule({ part }: { readonly part?: string } = {}): void {
  const build = useBench.getState().work?.build;
  if (build === undefined) return;
  clear();
  goTo('bench');
  begin(freshDraft(build, part), undefined);
}

/** Opens a rule of the build in the form. */
export function changeRule(rule: Rule): void {
  const build = useBench.getState().work?.build;
  if (build !== undefined) begin(draftOf(build, rule), rule);
}

/** Fills in blanks. */
export const fillIn = (to: (draft: Draft) => Draft): void =>
  useRuling.setState(({ draft }) => ({ draft: draft && to(draft) }));

/** Puts the form away. */
export const stopRuling = (): void => useRuling.setState({ draft: undefined, changing: undefined });

useBench.subscribe((now, before) => {
  // What was being changed may have gone by undo, and other work has other parts.
  const { changing, draft } = useRuling.getState();
  if (draft === undefined || now.work === before.work) return;
  const isGone = changing !== undefined && !now.work?.build.rules.includes(changing);
  if (now.work === undefined || isGone || now.work.key !== before.work?.key) stopRuling();
  else useRuling.setState({ draft: draftOver(now.work.build, draft) });
});
