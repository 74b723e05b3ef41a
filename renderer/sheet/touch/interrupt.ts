import { abandonMoves } from "../use-box-moves.ts";

/**
 * Ends what a finger has begun, as if it had never touched: boxes on the move go back, what is held is put back, frames
 * and cables that were being drawn are gone. Every gesture of the sheet takes a cancelled pointer so.
 */
export function interrupt(touches: readonly Touch[], pointers: Iterable<number>): void {
  abandonMoves();
  for (const pointerId of pointers)
    window.dispatchEvent(new PointerEvent("pointercancel", { pointerId, pointerType: "touch" }));
  // The flow listens for touches where they began.
  for (const touch of touches)
    touch.target.dispatchEvent(
      new TouchEvent("touchcancel", { bubbles: true, changedTouches: [touch], touches: [], targetTouches: [] }),
    );
}
