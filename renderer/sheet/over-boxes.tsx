import { useStore as useFlowStore, ViewportPortal } from "@xyflow/react";
import { useStore } from "../state/use-store.ts";
import { type GestureState, gestureStore } from "./gesture-store.ts";

/** Drawing units of a pixel. */
export const pixelOf = ({ transform }: { readonly transform: readonly [number, number, number] }): number =>
  1 / transform[2];

/** What lies over the boxes while a hand is at work: the frame that selects, and the lines that moved boxes lie on. */
export function OverBoxes() {
  const marquee = useStore(gestureStore, (gesture) => gesture.marquee);
  const guides = useStore(gestureStore, (gesture) => gesture.guides);
  const gaps = useStore(gestureStore, (gesture) => gesture.gaps);
  const pixel = useFlowStore(pixelOf);
  if (marquee === undefined && guides.length === 0 && gaps.length === 0) return null;
  return (
    <ViewportPortal>
      <svg className="sheet-over" width="1" height="1" aria-hidden="true">
        <GuideLines guides={guides} gaps={gaps} pixel={pixel} />
        {marquee && (
          <rect
            className="sheet-marquee"
            {...marquee}
            style={{ strokeWidth: 1.5 * pixel, strokeDasharray: `${5 * pixel} ${4 * pixel}` }}
          />
        )}
      </svg>
    </ViewportPortal>
  );
}

/** Lines that a box has come to lie on, and gaps that are even now. */
export function GuideLines({
  guides,
  gaps,
  pixel,
}: Pick<GestureState, "guides" | "gaps"> & { readonly pixel: number }) {
  const reach = 12 * pixel;
  const tick = 5 * pixel;
  return (
    <>
      {guides.map(({ axis, at, from, to }) => (
        <path
          key={axis}
          className="sheet-guide"
          d={axis === "x" ? `M${at} ${from - reach}V${to + reach}` : `M${from - reach} ${at}H${to + reach}`}
          style={{ strokeWidth: pixel, strokeDasharray: `${2 * pixel} ${3 * pixel}` }}
        />
      ))}
      {gaps.map(({ axis, at, from, to }) => (
        <path
          key={`${axis} ${from}`}
          className="sheet-guide-gap"
          d={
            axis === "x"
              ? `M${from} ${at}H${to}M${from} ${at - tick}v${2 * tick}M${to} ${at - tick}v${2 * tick}`
              : `M${at} ${from}V${to}M${at - tick} ${from}h${2 * tick}M${at - tick} ${to}h${2 * tick}`
          }
          style={{ strokeWidth: pixel }}
        />
      ))}
    </>
  );
}
