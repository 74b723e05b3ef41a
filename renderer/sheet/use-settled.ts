import { useEffect, useState } from "react";

/** How long something stays as it is before it is taken up, in milliseconds: longer than from one step of a wheel to the next. */
const SETTLED_MS = 150;

/**
 * A value once it has stopped changing, for what takes long to follow it.
 * @param mayStay Whether what is settled may be kept until then; else the value is taken up at once.
 */
export function useSettled<T>(value: T, mayStay: (settled: T) => boolean): T {
  const [settled, settle] = useState(value);
  const stays = mayStay(settled);
  if (!stays && settled !== value) settle(value);
  useEffect(() => {
    if (settled === value) return undefined;
    const timer = setTimeout(() => settle(value), SETTLED_MS);
    return () => clearTimeout(timer);
  }, [value, settled]);
  return stays ? settled : value;
}
