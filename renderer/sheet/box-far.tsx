import { memo } from "react";
import type { FillLedger } from "../../shared-model/answers/fill.ts";
import type { BoxDrawing } from "../../shared-model/geometry/box-drawing.ts";
import { toDecimal } from "../../shared-model/units/volume.ts";
import { GlyphShape } from "./draw/glyph-shape.tsx";
import { FOR_EYES_ONLY } from "./svg-roles.ts";

const SHOWN = 4;
/** A box lower than this has its devices beside its name. */
const LOW = 320;
const SIGN = 120;

/** Size of the severity sign of a box from afar. */
export const farSign = ({ height }: BoxDrawing): number => Math.min(SIGN, height * 0.42);

/** A box from afar: its name, what is in it, how full it is. Sizes are those that stay readable at a fifth of full size. */
export const BoxFar = memo(function BoxFar({
  drawing,
  ledger,
}: {
  readonly drawing: BoxDrawing;
  readonly ledger: FillLedger | undefined;
}) {
  const { width, height } = drawing;
  const devices = drawing.devices.filter(({ family }) => family !== "neutral-bar" && family !== "ground-bar");
  const shown = devices.slice(0, SHOWN);
  const nameSize = Math.min(120, height * (height < LOW ? 0.36 : 0.2));
  const bar = { height: Math.min(30, height * 0.12), y: height - Math.min(60, height * 0.24) };
  // Devices stand between the name and the bar, beside the name where the box is low.
  const low = height < LOW;
  const size = Math.min(
    low ? height * 0.5 : 340,
    (width - 40) / Math.max(1, shown.length),
    low ? height : bar.y - nameSize - 40,
  );
  const middle = low ? height * 0.42 : (nameSize + bar.y) / 2 + 6;
  const available = ledger?.available;
  const ratio =
    ledger && available !== undefined ? toDecimal(ledger.total) / Math.max(toDecimal(available), 0.0001) : undefined;
  return (
    <g className="sheet-far" {...FOR_EYES_ONLY}>
      <text className="sheet-far-name" x={24} y={nameSize + 6} fontSize={nameSize}>
        {drawing.header.name}
      </text>
      {drawing.kind === "panel" ? (
        <GlyphShape
          id="panel"
          x={width / 2}
          y={middle}
          size={Math.min(400, low ? height * 0.6 : bar.y - nameSize - 40)}
        />
      ) : (
        shown.map((device, i) => (
          <GlyphShape
            key={device.device}
            id={device.glyph}
            x={width / 2 + (i - (shown.length - 1) / 2) * size}
            y={middle}
            size={size * 0.86}
          />
        ))
      )}
      {ratio !== undefined && (
        <g className={ratio > 1 ? "sheet-fill sheet-fill-over" : "sheet-fill"}>
          <rect className="sheet-fill-track" x={24} y={bar.y} width={width - 48} height={bar.height} />
          <rect
            className="sheet-fill-ink"
            x={24}
            y={bar.y}
            width={(width - 48) * Math.min(1, ratio)}
            height={bar.height}
          />
        </g>
      )}
    </g>
  );
});
