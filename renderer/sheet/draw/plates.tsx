import { memo } from "react";
import type { Plate } from "../../../shared-model/geometry/box-drawing.ts";
import { textWidth } from "../../../shared-model/geometry/text-width.ts";
import { plateKey } from "../letterings.ts";
import { useLetterSize } from "./letters.tsx";

const SIZE = 11;
const PAD = 3;

/** A code set into its line like a contour value: a plate of paper interrupts the conductor. */
export const CodePlate = memo(function CodePlate({ plate }: { readonly plate: Plate }) {
  const size = useLetterSize(plateKey(plate));
  const width = (textWidth(plate.text, SIZE, 640) + PAD * 2) * size;
  return (
    <g
      className="sheet-plate"
      transform={`translate(${plate.at.x} ${plate.at.y})${plate.vertical ? " rotate(-90)" : ""}`}
    >
      <rect x={-width / 2} y={-7} width={width} height={14} />
      <text y={4} transform={size === 1 ? undefined : `scale(${size})`}>
        {plate.text}
      </text>
    </g>
  );
});
