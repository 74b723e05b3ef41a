import { type RefObject, useLayoutEffect, useState } from "react";

/** At the foot of the sheet, or at its head. */
type HintSpot = "foot" | "head";

/** Of the frame of the sheet and of the word of the state in its corner, in pixels. */
const HEAD = 56;

/**
 * Where the line of what is in the hand stands: at the head while it would cover more places at the foot that the hand may
 * reach for. Its button lies over what is under it, and a finger meant for a screw would put the end back.
 */
export function useHintSpot(root: RefObject<HTMLElement | null>, held: unknown): HintSpot {
  const [spot, setSpot] = useState<HintSpot>("foot");
  // biome-ignore lint/correctness/useExhaustiveDependencies: looked at anew for each thing that is taken up.
  useLayoutEffect(() => {
    setSpot("foot");
    // The places are marked a frame later.
    let frame = requestAnimationFrame(() => {
      frame = requestAnimationFrame(() => setSpot(freerOf(root.current)));
    });
    return () => cancelAnimationFrame(frame);
  }, [root, held]);
  return spot;
}

function freerOf(hint: HTMLElement | null): HintSpot {
  const sheet = hint?.closest(".sheet")?.getBoundingClientRect();
  if (hint === null || sheet === undefined) return "foot";
  const { left, right, top, bottom, height } = hint.getBoundingClientRect();
  const places = [...document.querySelectorAll(".sheet-targets .sheet-hit")].map((each) =>
    each.getBoundingClientRect(),
  );
  const covered = (from: number, to: number): number =>
    places.filter((place) => place.top < to && place.bottom > from && place.left < right && place.right > left).length;
  const head = sheet.top + HEAD;
  return covered(head, head + height) < covered(top, bottom) ? "head" : "foot";
}
