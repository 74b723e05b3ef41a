import { memo } from "react";
import { levelOf, unitOf } from "./detail.ts";
import type { RoomSign } from "./room-signs.ts";

/**
 * Rooms behind their boxes, under the cables. From afar they are painted with the boxes; what is here then only takes
 * presses for them.
 */
export const RoomsLayer = memo(function RoomsLayer({
  signs,
  step,
}: {
  readonly signs: readonly RoomSign[];
  readonly step: number;
}) {
  const level = levelOf(step);
  const unit = unitOf(step);
  if (level === "near") return null;
  return signs.map(({ key, room, rect, name, x, line, size }) => (
    <g key={key}>
      <rect
        className={level === "far" ? "sheet-room sheet-room-painted" : "sheet-room"}
        data-room={room?.id}
        data-full={room === undefined || name === room.name.toUpperCase() ? undefined : room.name}
        x={rect.x}
        y={rect.y}
        width={rect.width}
        height={rect.height}
        rx={2 * unit}
        style={{ strokeWidth: unit }}
      />
      {name !== "" && level !== "far" && (
        <text className="sheet-room-name" x={x} y={line} fontSize={size}>
          {name}
        </text>
      )}
    </g>
  ));
});
