/** Files and text that are dropped or pasted anywhere, and what was wrong with any of them. */
import { useEffect, useState } from 'react';
import { later } from '../later.tsx';
import { bringFiles, bringFromAddress, bringPasted } from '../opening/bring.ts';
import { refusalsRead, useRefused } from '../opening/refused.ts';
import { isTyping } from './typing.ts';

const Problems = later(
  'What is wrong with the file',
  async () => (await import('./Problems.tsx')).Problems,
);

/** The drop target while a file hangs over the page, and the dialog of problems. */
export function Incoming() {
  const { refused, isUntouched } = useRefused();
  const isOver = useDrop();
  useEffect(() => {
    document.addEventListener('paste', onPaste);
    return () => document.removeEventListener('paste', onPaste);
  }, []);
  useEffect(() => {
    bringFromAddress();
    addEventListener('hashchange', bringFromAddress);
    return () => removeEventListener('hashchange', bringFromAddress);
  }, []);
  return (
    <>
      {isOver ? <p className="drop">Let go to open it</p> : null}
      {refused.length === 0 ? null : (
        <Problems refused={refused} isUntouched={isUntouched} onClose={refusalsRead} />
      )}
    </>
  );
}

function onPaste(event: ClipboardEvent): void {
  // A dialog takes what is pasted into it as it sees fit.
  if (event.defaultPrevented || isTyping(event.target)) return;
  if (document.querySelector('dialog[open]') !== null) return;
  const files = [...(event.clipboardData?.files ?? [])];
  const text = event.clipboardData?.getData('text/plain') ?? '';
  if (files.length > 0) {
    event.preventDefault();
    void bringFiles(files);
  } else if (text !== '') void bringPasted(text);
}

/** Whether a file hangs over the page; dropping it opens it. */
function useDrop(): boolean {
  const [isOver, setOver] = useState(false);
  useEffect(() => {
    const holdsFile = (event: DragEvent): boolean =>
      !event.defaultPrevented && (event.dataTransfer?.types.includes('Files') ?? false);
    // A link, perhaps; a dialog and a field take words as they see fit.
    const holdsText = ({ defaultPrevented, dataTransfer, target }: DragEvent): boolean =>
      !defaultPrevented &&
      !isTyping(target) &&
      document.querySelector('dialog[open]') === null &&
      (dataTransfer?.types.includes('text/plain') ?? false);
    const over = (event: DragEvent): void => {
      if (holdsFile(event)) setOver(true);
      else if (!holdsText(event)) return;
      event.preventDefault();
    };
    const leave = (event: DragEvent): void => {
      if (event.relatedTarget === null) setOver(false);
    };
    const drop = (event: DragEvent): void => {
      setOver(false);
      const isFile = holdsFile(event);
      if (!isFile && !holdsText(event)) return;
      event.preventDefault();
      if (isFile) void bringFiles([...(event.dataTransfer?.files ?? [])]);
      else void bringPasted(event.dataTransfer?.getData('text/plain') ?? '');
    };
    document.addEventListener('dragover', over);
    document.addEventListener('dragleave', leave);
    document.addEventListener('drop', drop);
    return () => {
      document.removeEventListener('dragover', over);
      document.removeEventListener('dragleave', leave);
      document.removeEventListener('drop', drop);
    };
  }, []);
  return isOver;
}
