import { memo } from "react";
import type { Finish } from "../../../shared-model/catalog/device-type.ts";

const HEXAGON = "M8.96 0L4.48 7.76L-4.48 7.76L-8.96 0L-4.48 -7.76L4.48 -7.76Z";

/** A terminal by the trade's own marking: brass round with a slot, silver with a double ring, green a hexagon, dark filled. */
export const Screw = memo(function Screw({
  finish,
  x,
  y,
}: {
  readonly finish: Finish;
  readonly x: number;
  readonly y: number;
}) {
  return (
    <g className={`sheet-screw sheet-screw-${finish}`} transform={`translate(${x} ${y})`}>
      {finish === "green" ? <path d={HEXAGON} /> : <circle r={7.5} />}
      {finish === "silver" && <circle className="sheet-screw-ring" r={5.2} />}
      <path className="sheet-screw-slot" d="M-4.65 2.4L4.65 -2.4" />
    </g>
  );
});
