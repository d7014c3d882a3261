/** Kinds of input in which letters are typed. */
const typed = ['text', 'search', 'number', 'date', 'email', 'url', 'tel', 'password'];

/** Whether this is a field being typed in, which keeps its own undo and takes what is pasted. */
export const isTyping = (target: EventTarget | null): boolean =>
  (target instanceof HTMLInputElement && typed.includes(target.type)) ||
  target instanceof HTMLTextAreaElement ||
  (target instanceof HTMLElement && target.isContentEditable);
