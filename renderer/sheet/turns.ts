import { useLayoutEffect, useState } from "react";
import { flushSync } from "react-dom";
import type { EnclosureId } from "../../shared-model/model/ids.ts";
import { createStore, type Store } from "../state/store.ts";

/**
 * Boxes whose picture waits to be built. Many at once would hold the window up: a few come in the frame in which they are
 * wanted, the others one after another, and are painted from afar until then.
 */
export const waitingStore: Store<{ readonly ids: ReadonlySet<EnclosureId> }> = createStore<{
  readonly ids: ReadonlySet<EnclosureId>;
}>({ ids: new Set() });

/** How long building may hold up a frame, in milliseconds. */
const FRAME_MS = 7;
/** What is built in the frame in which it is wanted. */
const AT_ONCE = 12;
/** Of that, a box from middle distance, and a near one. */
export const WEIGHT = { middle: 1, near: 6 } as const;

const queue = new Map<EnclosureId, () => void>();
let used = 0;
let pumping = 0;

/** Whether there is room for it in this frame. */
function takeNow(weight: number): boolean {
  if (used > 0 && used + weight > AT_ONCE) return false;
  if (used === 0) requestAnimationFrame(() => setTimeout(() => (used = 0)));
  used += weight;
  return true;
}

function wait(id: EnclosureId, turn: () => void): () => void {
  queue.set(id, turn);
  if (pumping === 0) pumping = requestAnimationFrame(pump);
  tell();
  return () => {
    if (queue.get(id) !== turn) return;
    queue.delete(id);
    tell();
  };
}

let telling = false;

/** Once for all that begin to wait together, and before the frame is painted. */
function tell(): void {
  if (telling) return;
  telling = true;
  queueMicrotask(() => {
    telling = false;
    waitingStore.set({ ids: new Set(queue.keys()) });
  });
}

function pump(): void {
  pumping = 0;
  const end = performance.now() + FRAME_MS;
  for (const [id, turn] of queue) {
    queue.delete(id);
    flushSync(turn);
    if (performance.now() > end) break;
  }
  tell();
  if (queue.size > 0) pumping = requestAnimationFrame(pump);
}

/**
 * Whether the picture of a box may be built.
 * @param wanted Where it is not, the answer is no, and the next time it waits for its turn again.
 */
export function useTurn(id: EnclosureId, wanted: boolean, weight: number): boolean {
  const [ready, setReady] = useState(() => wanted && takeNow(weight));
  const [was, setWas] = useState(wanted);
  if (was !== wanted) {
    setWas(wanted);
    setReady(wanted && takeNow(weight));
  }
  const waits = wanted && !ready;
  useLayoutEffect(() => (waits ? wait(id, () => setReady(true)) : undefined), [id, waits]);
  return wanted && ready;
}
