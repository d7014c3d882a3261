/** What need not be told in the same frame as a change: a value, once the next frame has been shown. */
import { type RefObject, useEffect, useState } from 'react';

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

/** `value` where `place` is in the window; out of sight, as `useAfterwards` has it. */
export function useInSight<Value extends object>(
  place: RefObject<Element | null>,
  value: Value,
): Value {
  const [isInSight, setInSight] = useState(true);
  const late = useAfterwards(value);
  useEffect(() => {
    if (place.current === null) return;
    const watching = new IntersectionObserver((entries) => {
      setInSight(entries.at(-1)?.isIntersecting ?? true);
    });
    watching.observe(place.current);
    return () => watching.disconnect();
  }, [place]);
  return isInSight ? value : late;
}
