import { memo, useMemo } from "react";
import type { FillLedger } from "../../shared-model/answers/fill.ts";
import type { BoxDrawing, Wall } from "../../shared-model/geometry/box-drawing.ts";
import { WALL } from "../../shared-model/geometry/metrics.ts";
import { type MiddleDevice, middleBox, type TabDrawing } from "../../shared-model/geometry/middle-box.ts";
import { fitText, textWidth } from "../../shared-model/geometry/text-width.ts";
import { GlyphShape } from "./draw/glyph-shape.tsx";
import { MiddleFill } from "./middle-fill.tsx";
import { FOR_EYES_ONLY } from "./svg-roles.ts";

/** In pixels. */
const NAME = 15;
const NOTE = 12;
const FIGURES = 11.5;
const LETTERS = 12;
const TAB = { width: 7, height: 21 } as const;
/** Of the words over the upper wall. */
const LIFT = { plain: 7, change: 9, sign: 14 } as const;
/** A sign stands at the right end of the upper wall. */
const SIGN_ROOM = 14;

interface Middle {
  readonly drawing: BoxDrawing;
  readonly ledger: FillLedger | undefined;
  /** What the box is called besides its name: "laundry". */
  readonly note: string;
  /** "opened", "new": what the work does to it. */
  readonly change: string | undefined;
  readonly marked: boolean;
  /** How much of the sheet is free under it, in drawing units. */
  readonly below: number;
  /** Drawing units of a pixel. */
  readonly unit: number;
}

/** A box from middle distance: its name, its devices in their gangs, tabs where cables enter, how full it is. */
export const BoxMiddle = memo(function BoxMiddle({ drawing, ledger, note, change, marked, below, unit }: Middle) {
  const middle = useMemo(() => middleBox(drawing, unit), [drawing, unit]);
  const { width, height } = drawing;
  return (
    <g className="sheet-middle" {...FOR_EYES_ONLY} style={{ strokeWidth: unit }}>
      {width > 20 * unit && (
        <rect
          className="sheet-middle-inner"
          x={2.5 * unit}
          y={2.5 * unit}
          width={width - 5 * unit}
          height={height - 5 * unit}
          rx={unit}
        />
      )}
      {middle.freeSlots.map(({ slot, at }) => (
        <rect key={slot} className="sheet-middle-slot" {...at} rx={unit} />
      ))}
      {middle.devices.map((device) => (
        <DevicePlate key={device.device} device={device} unit={unit} panel={drawing.kind === "panel"} />
      ))}
      {middle.splicesAt && (
        <Splices count={drawing.splices.length} x={middle.splicesAt.x} y={middle.splicesAt.y} unit={unit} />
      )}
      {middle.tabs.map(({ cable, side, at, wall, out }) => (
        <rect
          key={`${cable}.${side}`}
          className="sheet-middle-tab"
          transform={`translate(${at.x} ${at.y})${wall === "top" || wall === "bottom" ? " rotate(90)" : ""}`}
          x={(-TAB.width * unit) / 2 - (out * unit) / 2}
          y={(-TAB.height * unit) / 2}
          width={TAB.width * unit}
          height={TAB.height * unit}
          rx={unit}
        />
      ))}
      <Name
        name={drawing.header.name}
        note={note}
        change={change}
        from={beside(middle.tabs, "top", unit)}
        width={width}
        marked={marked}
        unit={unit}
      />
      {ledger && (
        <MiddleFill
          ledger={ledger}
          left={beside(middle.tabs, "bottom", unit)}
          width={width}
          y={height + WALL}
          free={below - 2 * WALL}
          unit={unit}
        />
      )}
    </g>
  );
});

/** Where words along a wall begin: at its corner, or right of the tabs in it. */
const beside = (tabs: readonly TabDrawing[], wall: Wall, unit: number): number =>
  Math.max(-WALL, ...tabs.filter((tab) => tab.wall === wall).map(({ at }) => at.x + (TAB.height / 2 + 4) * unit));

function DevicePlate({
  device,
  unit,
  panel,
}: {
  readonly device: MiddleDevice;
  readonly unit: number;
  readonly panel: boolean;
}) {
  const { plate, glyph, glyphSize, glyphAt, name, nameAt } = device;
  const size = LETTERS * unit;
  const fits = textWidth(name, size, 700) <= plate.width && plate.height >= size;
  return (
    <g>
      <rect className="sheet-middle-device" {...plate} rx={(panel ? 1 : 4) * unit} />
      {glyphSize > 0 && <GlyphShape id={glyph} x={glyphAt.x} y={glyphAt.y} size={glyphSize} />}
      {fits && (
        <text className="sheet-middle-id" x={nameAt.x} y={panel ? nameAt.y + size * 0.35 : nameAt.y} fontSize={size}>
          {name}
        </text>
      )}
    </g>
  );
}

/** "6 splices", with the capsule they are drawn as. */
function Splices({
  count,
  x,
  y,
  unit,
}: {
  readonly count: number;
  readonly x: number;
  readonly y: number;
  readonly unit: number;
}) {
  const words = `${count} ${count === 1 ? "splice" : "splices"}`;
  const size = FIGURES * unit;
  const left = x - (textWidth(words, size) + 12 * unit) / 2;
  return (
    <g className="sheet-middle-splices">
      <rect x={left} y={y - 10 * unit} width={6 * unit} height={12 * unit} rx={3 * unit} />
      <path d={`M${left + 3 * unit} ${y - 7 * unit}v${6 * unit}`} />
      <text x={left + 12 * unit} y={y} fontSize={size}>
        {words}
      </text>
    </g>
  );
}

function Name({
  name,
  note,
  change,
  from,
  width,
  marked,
  unit,
}: Pick<Middle, "note" | "change" | "marked" | "unit"> & {
  readonly name: string;
  readonly from: number;
  readonly width: number;
}) {
  // On the line of the name: above it stands the name of the room.
  const changeAt = from + textWidth(name, NAME * unit, 750) + 6 * unit;
  const noteAt = change === undefined ? changeAt : changeAt + textWidth(change, NOTE * unit, 700) + 6 * unit;
  const room = width + WALL - noteAt - (marked ? SIGN_ROOM * unit : 0);
  const fitted = fitText(note, room, NOTE * unit);
  // Over the dashed line around an opened box; over the sign too where the words run that far.
  const y = -WALL - (change === undefined ? LIFT.plain : room < 0 && marked ? LIFT.sign : LIFT.change) * unit;
  return (
    <>
      <text className="sheet-middle-name" x={from} y={y} fontSize={NAME * unit}>
        {name}
      </text>
      {change !== undefined && (
        <text className="sheet-middle-change" x={changeAt} y={y} fontSize={NOTE * unit}>
          {change}
        </text>
      )}
      {fitted.length > 3 && (
        <text className="sheet-middle-note" x={noteAt} y={y} fontSize={NOTE * unit}>
          {fitted}
        </text>
      )}
    </>
  );
}
