import { valuesAtHand } from "./deferred-fields.ts";

/**
 * Freezes plain data through and through, in place. Stops at what is frozen already: that was frozen the same way. What is
 * still to be read is frozen by whoever reads it.
 */
export function freezeThrough<T>(value: T): T {
  if (typeof value !== "object" || value === null || Object.isFrozen(value)) return value;
  Object.freeze(value);
  for (const item of valuesAtHand(value)) freezeThrough(item);
  return value;
}
