import { memo } from "react";
import type { DeviceDrawing } from "../../../shared-model/geometry/box-drawing.ts";
import { fitText, textWidth } from "../../../shared-model/geometry/text-width.ts";
import { deviceKey } from "../letterings.ts";
import { DeviceFace } from "./device-face.tsx";
import { Letters } from "./letters.tsx";
import { NewFlag } from "./small-tags.tsx";
import { TerminalShape } from "./terminal-shape.tsx";
import { wording } from "./words.ts";

/** A device in its gang: body, face, terminals; LINE and LOAD are written out on a ground-fault device. */
export const DeviceShape = memo(function DeviceShape({
  device,
  chosen,
  fresh,
  replaces,
}: {
  readonly device: DeviceDrawing;
  readonly chosen: boolean;
  /** As found does not have it. */
  readonly fresh: boolean;
  /** Name of the device of as found whose place it takes. */
  readonly replaces: string | undefined;
}) {
  const { body } = device;
  const middle = body.x + body.width / 2;
  const senses = device.family === "ground-fault-receptacle" || device.family === "ground-fault-blank";
  return (
    <g className={`sheet-device${chosen ? " sheet-chosen" : ""}${fresh ? " sheet-new" : ""}`}>
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
            {wording.line}
          </text>
          <text className="sheet-line-load" x={middle} y={body.y + body.height - 10.5}>
            {wording.load}
          </text>
          <Contacts device={device} />
        </>
      )}
      <DeviceFace device={device} />
      {device.terminals.map((terminal) => (
        <TerminalShape key={terminal.terminal} terminal={terminal} body={body} />
      ))}
      <DeviceName device={device} fresh={fresh} replaces={replaces} />
    </g>
  );
});

/** Name and make above a yoke; the name alone on a breaker, where the slot leaves no room for more. */
function DeviceName({
  device,
  fresh,
  replaces,
}: {
  readonly device: DeviceDrawing;
  readonly fresh: boolean;
  readonly replaces: string | undefined;
}) {
  const { labelAt, name, caption, family, body } = device;
  if (family === "breaker" || family === "fuse") {
    return (
      <>
        {fresh && <NewFlag x={body.x + body.width / 2} y={body.y} size={15} />}
        <text className="sheet-breaker-name" x={labelAt.x} y={labelAt.y}>
          {name}
        </text>
      </>
    );
  }
  if (replaces !== undefined) return <ReplacingName device={device} replaced={replaces} />;
  const bar = family === "neutral-bar" || family === "ground-bar";
  return (
    <Letters of={deviceKey(device.device)} about={{ x: labelAt.x, y: labelAt.y + 19 }}>
      {fresh && !bar && <NewFlag x={labelAt.x - textWidth(name, 15, 700) / 2 - 14} y={labelAt.y - 5} />}
      <text className="sheet-item-name" x={labelAt.x} y={labelAt.y}>
        {name}
      </text>
      {caption.toLowerCase() !== name.toLowerCase() && <Caption device={device} />}
    </Letters>
  );
}

const Caption = ({ device: { labelAt, caption } }: { readonly device: DeviceDrawing }) => (
  <text className="sheet-item-note" x={labelAt.x} y={labelAt.y + 15}>
    {caption}
  </text>
);

/** Words over a device stay clear of the plates on the lanes beside it. */
const WORDS_WIDTH = 156;
const FLAG = 22;

/** "R1b replaces R1" in one line, with the flag of what is new before it. */
function ReplacingName({ device, replaced }: { readonly device: DeviceDrawing; readonly replaced: string }) {
  const { name, labelAt } = device;
  const nameWidth = textWidth(name, 15, 700);
  const words = fitText(wording.replaces(replaced), Math.max(60, WORDS_WIDTH - FLAG - nameWidth - 6), 12);
  const left = labelAt.x - (FLAG + nameWidth + 6 + textWidth(words, 12)) / 2;
  return (
    <>
      <NewFlag x={left + 8} y={labelAt.y - 5} />
      <text className="sheet-item-name" x={left + FLAG + nameWidth / 2} y={labelAt.y}>
        {name}
      </text>
      <text className="sheet-item-note sheet-replaces" x={left + FLAG + nameWidth + 6} y={labelAt.y}>
        {words}
      </text>
      <Caption device={device} />
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
