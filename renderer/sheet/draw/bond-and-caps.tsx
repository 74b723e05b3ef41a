import { memo } from "react";
import type { BondDrawing, CapDrawing, Wall } from "../../../shared-model/geometry/box-drawing.ts";
import { BOND_KEY } from "../letterings.ts";
import { Letters } from "./letters.tsx";
import { Screw } from "./screw.tsx";
import { wording } from "./words.ts";

/** The grounding screw in the metal of the box: a green hexagon over a ground mark. */
export const BondShape = memo(function BondShape({
  bond,
  chosen,
}: {
  readonly bond: BondDrawing;
  readonly chosen: boolean;
}) {
  const { x, y } = bond.at;
  return (
    <g className={chosen ? "sheet-bond sheet-chosen" : "sheet-bond"}>
      <Screw finish="green" x={x} y={y} />
      <path d={`M${x} ${y + 10}v8M${x - 9} ${y + 18}h18M${x - 5.5} ${y + 21.6}h11M${x - 2.5} ${y + 25}h5`} />
      <Letters of={BOND_KEY} about={bond.labelAt}>
        <text className="sheet-bond-name" x={bond.labelAt.x} y={bond.labelAt.y} textAnchor={bond.labelAnchor}>
          {wording.groundScrew}
        </text>
        <text className="sheet-bond-note" x={bond.labelAt.x} y={bond.labelAt.y + 13} textAnchor={bond.labelAnchor}>
          {wording.green}
        </text>
      </Letters>
    </g>
  );
});

const TURN: Readonly<Record<Wall, number>> = { left: 0, top: 90, right: 180, bottom: 270 };

/** A capped end wears its connector; a loose one shows bare copper in the open. */
export const CapShape = memo(function CapShape({ cap }: { readonly cap: CapDrawing }) {
  const turn = `translate(${cap.at.x} ${cap.at.y}) rotate(${TURN[cap.from]})`;
  if (cap.kind === "loose") {
    return (
      <g className="sheet-loose" transform={turn}>
        <path className="sheet-loose-casing" d="M0 0h14" />
        <path className="sheet-loose-core" d="M0 0h14" />
      </g>
    );
  }
  return <path className="sheet-cap" transform={turn} d="M-2 -5.6h11a5.6 5.6 0 0 1 0 11.2h-11z" />;
});
