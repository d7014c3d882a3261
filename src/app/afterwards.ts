/** What need not be told in the same frame as a change: a value, once the next frame has been shown. */
import { useEffect, useState } from 'react';

/** `value` as it was in the frame before, until the frame with the new one is on screen. */
export function useAfterwards<Value extends object | string>(value: Value): Value {
  const [shown, setShown] = useState(value);
  useEffect(() => {
    let timer: ReturnType<typeof setTimeout> | undefined;
    const frame = requestAnimationFrame(() => {
      timer = setTimeout(() => setShown(value));
    });
    return () => {
      cancelAnimationFrame(frame);
      clearTimeout(timer);
    };
  }, [value]);
  return shown;
}
