import type { Rect, TerminalDrawing } from "../../../shared-model/geometry/box-drawing.ts";
import { terminalKey } from "../letterings.ts";
import { Letters } from "./letters.tsx";
import { Screw } from "./screw.tsx";

/** A terminal: block, screw and holes; a hole is a ring, and a dot shows that it is taken. */
export function TerminalShape({ terminal, body }: { readonly terminal: TerminalDrawing; readonly body: Rect }) {
  const { block, screw, holes, labelAt, labelAnchor, word, label } = terminal;
  // A bar is all holes; a breaker's block leaves no room for the word under the letter.
  const isBar = terminal.entryKind === "neutral-bar" || terminal.entryKind === "ground-bar";
  const showsScrew = !isBar && terminal.entryKind !== "lead";
  const isLow = block !== undefined && block.height < 24;
  const atScrew = holes.some((hole) => Math.hypot(hole.at.x - screw.x, hole.at.y - screw.y) < 6);
  return (
    <g className="sheet-terminal">
      {terminal.entryKind === "lead" &&
        holes.map(({ hole, at }) => <path key={hole} className="sheet-lead" d={leadPath(at.x, at.y, body)} />)}
      {block && <rect x={block.x} y={block.y} width={block.width} height={block.height} rx={3} />}
      {showsScrew && <Screw finish={terminal.finish} x={screw.x} y={screw.y} />}
      {holes.map((hole) => (
        <g key={hole.hole}>
          {!(atScrew && showsScrew) && <circle className="sheet-hole" cx={hole.at.x} cy={hole.at.y} r={4.4} />}
          {hole.taken && <circle className="sheet-hole-taken" cx={hole.at.x} cy={hole.at.y} r={2.7} />}
        </g>
      ))}
      <Letters of={terminalKey(labelAt)} about={labelAt}>
        <text className="sheet-terminal-label" x={labelAt.x} y={labelAt.y} textAnchor={labelAnchor}>
          {label}
        </text>
        {word !== "" && !isLow && (
          <text className="sheet-terminal-word" x={labelAt.x} y={labelAt.y + 12.5} textAnchor={labelAnchor}>
            {word}
          </text>
        )}
      </Letters>
    </g>
  );
}

/** A lead as made, from the body to where it is joined. */
const leadPath = (x: number, y: number, { x: left, width }: Rect): string =>
  `M${x < left ? left : left + width} ${y}H${x}`;
