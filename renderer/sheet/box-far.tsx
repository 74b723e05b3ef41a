import { memo } from "react";
import type { FillLedger } from "../../shared-model/answers/fill.ts";
import type { BoxDrawing } from "../../shared-model/geometry/box-drawing.ts";
import { textWidth } from "../../shared-model/geometry/text-width.ts";
import { toDecimal } from "../../shared-model/units/volume.ts";
import { GlyphShape } from "./draw/glyph-shape.tsx";
import { FOR_EYES_ONLY } from "./svg-roles.ts";

/** In pixels. */
const GLYPH = 26;
const NAME = 12;
/** Smaller letters are not read. */
const LEAST_NAME = 11;
/** What a name may stand out over a box on each side: half of the room that boxes leave between them. */
const OVER = 7;
/** A box lower than this only has room for a sign. */
const LOWEST = 7;
/** Height of a capital, of the size of its letters. */
const CAPITAL = 0.72;
const BAR = { height: 3.5, margin: 4 } as const;
const SHOWN = 3;
/** Lower than this, a box has no room for its signs under its name. */
const LOW = 44;

/** A box from afar: what is in it, its name and how full it is, as far as there is room for them. */
export const BoxFar = memo(function BoxFar({
  drawing,
  ledger,
  unit,
}: {
  readonly drawing: BoxDrawing;
  readonly ledger: FillLedger | undefined;
  /** Drawing units of a pixel. */
  readonly unit: number;
}) {
  const { width, height, header } = drawing;
  const nameWidth = textWidth(header.name, NAME * unit, 750) + 4 * unit;
  const named = height >= 20 * unit && width >= nameWidth + 3 * unit;
  // In a box that is too small for name and signs, the name comes first.
  const alone =
    !named && height >= LOWEST * unit && width + 2 * OVER * unit >= textWidth(header.name, LEAST_NAME * unit, 750);
  const ratio = ratioOf(ledger);
  const barRoom = ratio === undefined || height < 14 * unit ? 0 : (BAR.height + BAR.margin) * unit;
  const glyphs =
    drawing.kind === "panel"
      ? ["panel"]
      : drawing.devices
          .filter(({ family }) => family !== "neutral-bar" && family !== "ground-bar")
          .map(({ glyph }) => glyph);
  // In a low box the signs stand beside the name, where there is room for them.
  const beside = named && height < LOW * unit && width >= nameWidth + 14 * unit;
  const room = {
    x: beside ? nameWidth : 0,
    y: named && !beside ? (NAME + 3) * unit : 0,
  };
  const wide = width - room.x - 2 * unit;
  const shown = glyphs.slice(0, SHOWN);
  const size = Math.min(GLYPH * unit * 1.2, height - room.y - barRoom - 2 * unit, wide / Math.max(1, shown.length));
  const middle = { x: room.x + wide / 2, y: (room.y + height - barRoom) / 2 };
  if (alone) {
    const bar = ratio !== undefined && height >= (LEAST_NAME + 3 + BAR.height) * unit;
    // As low as there is room for it: the worst finding stands at the upper corner.
    const foot = height - (bar ? BAR.height + 2.5 : 1.5) * unit;
    const y = Math.max(foot, (height + LEAST_NAME * CAPITAL * unit) / 2);
    return (
      <g className="sheet-far" {...FOR_EYES_ONLY}>
        {bar && <Bar ratio={ratio} width={width} y={height - (BAR.height + 1) * unit} unit={unit} />}
        <text
          className="sheet-far-name sheet-far-name-alone"
          x={width / 2}
          y={y}
          fontSize={LEAST_NAME * unit}
          style={{ strokeWidth: 3 * unit }}
        >
          {header.name}
        </text>
      </g>
    );
  }
  return (
    <g className="sheet-far" {...FOR_EYES_ONLY}>
      {named && (
        <text className="sheet-far-name" x={4 * unit} y={(NAME + 1) * unit} fontSize={NAME * unit}>
          {header.name}
        </text>
      )}
      {size >= 7 * unit &&
        shown.map((glyph, i) => (
          <GlyphShape
            // A box may hold two of a kind.
            key={`${glyph} ${shown.indexOf(glyph, i)}`}
            id={glyph}
            x={middle.x + (i - (shown.length - 1) / 2) * size}
            y={middle.y}
            size={size}
          />
        ))}
      {ratio !== undefined && barRoom > 0 && <Bar ratio={ratio} width={width} y={height - barRoom} unit={unit} />}
    </g>
  );
});

function ratioOf(ledger: FillLedger | undefined): number | undefined {
  const available = ledger?.available;
  if (ledger === undefined || available === undefined) return undefined;
  return toDecimal(ledger.total) / Math.max(toDecimal(available), 0.0001);
}

function Bar({
  ratio,
  width,
  y,
  unit,
}: {
  readonly ratio: number;
  readonly width: number;
  readonly y: number;
  readonly unit: number;
}) {
  const x = 3 * unit;
  const long = width - 2 * x;
  return (
    <g className={ratio > 1 ? "sheet-fill sheet-fill-over" : "sheet-fill"}>
      <rect className="sheet-fill-track" x={x} y={y} width={long} height={BAR.height * unit} />
      <rect className="sheet-fill-ink" x={x} y={y} width={long * Math.min(1, ratio)} height={BAR.height * unit} />
    </g>
  );
}
