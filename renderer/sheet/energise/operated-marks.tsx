import type { Operable } from "../../../shared-model/answers/energised.ts";
import type { DeviceDrawing } from "../../../shared-model/geometry/box-drawing.ts";
import { textWidth } from "../../../shared-model/geometry/text-width.ts";
import { standsWords } from "../../state/energise/energise-words.ts";
import { standsOnBreaker } from "./stands-on-breaker.ts";
import { wording } from "./words.ts";

/** How a device stands, over its face: the word on a plate, and open contacts where it has tripped. */
export function OperatedMarks({
  device,
  operables,
}: {
  readonly device: DeviceDrawing;
  readonly operables: readonly Operable[];
}) {
  const { body, family } = device;
  const x = body.x + body.width / 2;
  const isBreaker = family === "breaker" || family === "fuse";
  const shown = operables.filter((one) => isBreaker || one.kind !== "load" || !one.plugged);
  const tripped = operables.some((one) => one.kind === "ground-fault" && one.stands !== "set");
  return (
    <>
      {tripped && family === "ground-fault-receptacle" && (
        <>
          <OpenContacts device={device} />
          <ResetOut device={device} />
        </>
      )}
      {shown.map((one, i) => {
        const words = wordsOf(one, isBreaker);
        const wanted = textWidth(words, 11, 700) + 10;
        const span = isBreaker ? standsOnBreaker(device, wanted) : { x: x - wanted / 2, width: wanted };
        const { width } = span;
        const at = isBreaker
          ? { x: span.x + width / 2, y: body.y + body.height / 2 }
          : family === "ground-fault-receptacle"
            ? { x, y: body.y + 35 }
            : { x, y: body.y + body.height - 14 - i * 18 };
        return (
          <g
            key={one.kind === "switch" ? one.handle : one.kind}
            className={`sheet-stands sheet-stands-${isIn(one) ? "in" : "out"}`}
            transform={`translate(${at.x} ${at.y})`}
          >
            <rect x={-width / 2} y={-8} width={width} height={16} rx={2} />
            <text y={4} {...(width < wanted && { textLength: width - 4, lengthAdjust: "spacingAndGlyphs" })}>
              {words}
            </text>
          </g>
        );
      })}
    </>
  );
}

const isIn = (one: Operable): boolean => {
  switch (one.kind) {
    case "breaker":
      return one.stands === "on";
    case "ground-fault":
      return one.stands === "set";
    case "load":
      return one.inUse;
    case "switch":
      return one.positions[0] !== "on" || one.position === 0;
  }
};

/** A breaker leaves room for four letters between its name and its terminal. */
function wordsOf(one: Operable, isBreaker: boolean): string {
  const words = standsWords(one).toUpperCase();
  return isBreaker && words === "TRIPPED" ? "TRIP" : words;
}

/** The levers of the two inner paths, open: over the closed ones that the drawing has. */
function OpenContacts({ device: { body, terminals } }: { readonly device: DeviceDrawing }) {
  const blocks = terminals.flatMap(({ block }) => (block === undefined ? [] : [block]));
  const upper = Math.min(...blocks.map((block) => block.y + block.height));
  const lower = Math.max(...blocks.map((block) => block.y));
  if (!(lower - upper > 40)) return null;
  const y = (upper + lower) / 2;
  return (
    <g className="sheet-open-contacts">
      {[
        [body.x + 10, 9],
        [body.x + body.width - 10, -9],
      ].map(([x = 0, out = 0]) => (
        <g key={x}>
          <rect x={x - 2.5} y={y - 6} width={5} height={12} />
          <path d={`M${x} ${y + 6}L${x + out} ${y - 6}`} />
        </g>
      ))}
    </g>
  );
}

/** The RESET button stands out: over the one that the drawing has pressed in. */
function ResetOut({ device: { face } }: { readonly device: DeviceDrawing }) {
  if (face.height < 80 || face.width < 40) return null;
  const [x, y] = [face.x + face.width / 2, face.y + face.height / 2];
  return (
    <g className="sheet-reset-out">
      <rect x={x - 2} y={y - 11} width={46} height={22} rx={3} />
      <text x={x + 21} y={y + 4}>
        {wording.reset2}
      </text>
    </g>
  );
}
