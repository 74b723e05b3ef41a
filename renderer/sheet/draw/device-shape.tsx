import { memo } from "react";
import type { DeviceDrawing } from "../../../shared-model/geometry/box-drawing.ts";
import { DeviceFace } from "./device-face.tsx";
import { TerminalShape } from "./terminal-shape.tsx";

/** A device in its gang: body, face, terminals; LINE and LOAD are written out on a ground-fault device. */
export const DeviceShape = memo(function DeviceShape({
  device,
  chosen,
}: {
  readonly device: DeviceDrawing;
  readonly chosen: boolean;
}) {
  const { body } = device;
  const middle = body.x + body.width / 2;
  const senses = device.family === "ground-fault-receptacle" || device.family === "ground-fault-blank";
  return (
    <g className={chosen ? "sheet-device sheet-chosen" : "sheet-device"}>
      <rect
        className="sheet-device-body"
        x={body.x}
        y={body.y}
        width={body.width}
        height={body.height}
        rx={Math.min(10, body.height / 6)}
      />
      {senses && (
        <>
          <text className="sheet-line-load" x={middle} y={body.y + 20}>
            LINE
          </text>
          <text className="sheet-line-load" x={middle} y={body.y + body.height - 10.5}>
            LOAD
          </text>
          <Contacts device={device} />
        </>
      )}
      <DeviceFace device={device} />
      {device.terminals.map((terminal) => (
        <TerminalShape key={terminal.terminal} terminal={terminal} body={body} />
      ))}
      <DeviceName device={device} />
    </g>
  );
});

/** Name and make above a yoke; the name alone on a breaker, where the slot leaves no room for more. */
function DeviceName({ device }: { readonly device: DeviceDrawing }) {
  const { labelAt, name, caption, family } = device;
  if (family === "breaker" || family === "fuse") {
    return (
      <text className="sheet-breaker-name" x={labelAt.x} y={labelAt.y}>
        {name}
      </text>
    );
  }
  return (
    <>
      <text className="sheet-item-name" x={labelAt.x} y={labelAt.y}>
        {name}
      </text>
      <text className="sheet-item-note" x={labelAt.x} y={labelAt.y + 15}>
        {caption}
      </text>
    </>
  );
}

/** The two inner paths from LINE to LOAD with their contacts, drawn closed: the drawing shows the device reset. */
function Contacts({ device }: { readonly device: DeviceDrawing }) {
  const { body } = device;
  const blocks = device.terminals.flatMap(({ block }) => (block === undefined ? [] : [block]));
  const upper = Math.min(...blocks.map((block) => block.y + block.height));
  const lower = Math.max(...blocks.map((block) => block.y));
  if (!(lower - upper > 40)) return null;
  const centre = (upper + lower) / 2;
  return (
    <g className="sheet-contacts">
      {[body.x + 10, body.x + body.width - 10].map((x) => (
        <g key={x}>
          <path d={`M${x} ${upper + 2}V${centre - 6}M${x} ${centre + 6}V${lower - 2}`} />
          <path className="sheet-contact-bar" d={`M${x} ${centre - 6}V${centre + 6}`} />
          <circle cx={x} cy={centre - 6} r={2.2} />
          <circle cx={x} cy={centre + 6} r={2.2} />
        </g>
      ))}
    </g>
  );
}
