/** @jsxImportSource preact */
/** What does the link hold? The page of one round, opened anew whenever the link changes. */
import { useEffect, useMemo, useState } from 'preact/hooks';
import { openedFrom } from './opened.ts';
import { Empty, Refused } from './Refused.tsx';
import { RoundPage } from './RoundPage.tsx';

/** The whole page. */
export function Asked() {
  const [link, setLink] = useState(location.hash);
  useEffect(() => {
    const follow = (): void => setLink(location.hash);
    window.addEventListener('hashchange', follow);
    return () => window.removeEventListener('hashchange', follow);
  }, []);
  const opened = useMemo(() => openedFrom(link), [link]);
  const name = opened.kind === 'round' ? opened.round.build.name : undefined;
  useEffect(() => {
    document.title = `${name === undefined ? 'Which one?' : `${name}: which one?`} · Testspoon`;
  }, [name]);
  switch (opened.kind) {
    case 'empty':
      return <Empty />;
    case 'refused':
      return <Refused error={opened.error} />;
    case 'round':
      return <RoundPage key={opened.link} round={opened.round} link={opened.link} />;
  }
}
