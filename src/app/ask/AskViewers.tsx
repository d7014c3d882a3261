/**
 * Viewers are asked: what goes along, the link, a code to scan, a picture and a ready text. Nothing
 * here changes the build, and nothing leaves this machine: the link itself holds what is asked.
 */
import { useMemo, useState } from 'react';
import { InputError } from '../../ground/problem.ts';
import { addressOf } from '../../opinion/link/link.ts';
import { type Round, roundOf } from '../../opinion/round.ts';
import { useStaged } from '../onStage.ts';
import { cleared } from '../overlay/overlay.ts';
import { Dialog } from '../pieces/Dialog.tsx';
import { useWork } from '../store.ts';
import { Asked } from './Asked.tsx';
import { folderOf, keepBase, keptBase, reachOf } from './base.ts';
import { CodeToScan } from './CodeToScan.tsx';
import { LinkOut } from './LinkOut.tsx';
import { Post } from './Post.tsx';
import { Where } from './Where.tsx';
import type { Wanted } from './wanted.ts';
import './ask.css';

/** The dialog. */
export function AskViewers() {
  return (
    <Dialog title="Ask viewers" className="ask" onClose={() => cleared('ask')}>
      <Asking />
    </Dialog>
  );
}

function Asking() {
  const { build } = useWork();
  const staged = useStaged();
  const [wanted, setWanted] = useState<Wanted>(() => ({
    alternatives: staged.map(({ alternative }) => alternative.id),
    parts: [],
    withStory: false,
  }));
  const [base, setBase] = useState(baseNow);
  const round = useMemo(() => roundOf(build, wanted), [build, wanted]);
  const isAskable = round.build.alternatives.length >= 2;
  const address = useMemo(
    () => (isAskable ? addressIfAny(base, round) : undefined),
    [base, round, isAskable],
  );
  const change = (next: Partial<Wanted>): void => setWanted((now) => ({ ...now, ...next }));
  return (
    <div className="ask-parts">
      <Asked wanted={wanted} round={round} onChange={change} />
      {isAskable && address === undefined ? (
        <p className="ask-warning" role="status">
          This is too much for any link. Ask about fewer alternatives, or leave the story out.
        </p>
      ) : null}
      {address === undefined ? null : (
        <>
          <LinkOut address={address} wanted={wanted} onChange={change}>
            <Where
              base={base}
              onBase={(typed) => {
                keepBase(typed);
                setBase(typed ?? ownFolder());
              }}
            />
          </LinkOut>
          <CodeToScan address={address} round={round} wanted={wanted} />
          <Post address={address} round={round} wanted={wanted} />
        </>
      )}
    </div>
  );
}

/** The address for viewers; undefined where no link could hold the round. */
function addressIfAny(base: string, round: Round): string | undefined {
  try {
    return addressOf(base, round);
  } catch (error) {
    if (error instanceof InputError) return undefined;
    throw error;
  }
}

const ownFolder = (): string => folderOf(document.baseURI);

/** The folder of this page where others can get at it, else what was typed on an earlier visit. */
function baseNow(): string {
  const own = ownFolder();
  return reachOf(own) === 'anyone' ? own : (keptBase() ?? own);
}
