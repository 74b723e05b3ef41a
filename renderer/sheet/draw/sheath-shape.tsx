import { memo } from "react";
import type { SheathDrawing, Wall } from "../../../shared-model/geometry/box-drawing.ts";
import { feetPath } from "../../../shared-model/geometry/feet-path.ts";
import { WALL } from "../../../shared-model/geometry/metrics.ts";
import { textWidth } from "../../../shared-model/geometry/text-width.ts";
import { captionKey, sheathKey } from "../letterings.ts";
import { Letters } from "./letters.tsx";
import { NewFlag } from "./small-tags.tsx";

/** Every sheath is drawn as if it came through the left wall and then turned; words are set upright afterwards. */
const TURN: Readonly<Record<Wall, number>> = { left: 0, top: 90, right: 180, bottom: 270 };
const HALF = 10;

/** A cable where it enters: the stub of its sheath, what holds it in the wall, and its end inside. */
export const SheathShape = memo(function SheathShape({
  sheath,
  torn,
  guarded,
  fresh,
}: {
  readonly sheath: SheathDrawing;
  /** It goes on into country that is not drawn. */
  readonly torn: boolean;
  /** All its insulated conductors lie behind a ground-fault device. */
  readonly guarded: boolean;
  /** As found does not have it. */
  readonly fresh: boolean;
}) {
  const reach = Math.hypot(sheath.outer.x - sheath.at.x, sheath.outer.y - sheath.at.y);
  const clamp = sheath.means === "internal-clamp" || sheath.means === "integral-clamp";
  return (
    <g
      className={fresh ? "sheet-sheath sheet-new" : "sheet-sheath"}
      transform={`translate(${sheath.at.x} ${sheath.at.y}) rotate(${TURN[sheath.wall]})`}
    >
      <rect className="sheet-sheath-body" x={-reach} y={-HALF} width={reach} height={HALF * 2} />
      <rect className="sheet-sheath-body" x={0} y={-HALF} width={20} height={HALF * 2} />
      <path className="sheet-sheath-edge" d={`M${-reach} -10H20V10H${-reach}`} />
      {torn && <path className="sheet-sheath-torn" d={`M${-reach} -10q5 4 0 8t0 8t0 4`} />}
      <rect className="sheet-sheath-gate" x={-WALL} y={-HALF} width={WALL} height={HALF * 2} />
      {guarded && (
        <path
          className="sheet-feet"
          transform={sheath.wall === "right" ? "scale(1 -1)" : undefined}
          d={feetPath(
            [
              { x: -reach, y: 0 },
              { x: -WALL - 8, y: 0 },
            ],
            HALF,
            6,
            7,
          )}
        />
      )}
      {sheath.means === "external-connector" && <ExternalConnector />}
      {clamp && <Clamp withScrew={sheath.means === "internal-clamp"} />}
    </g>
  );
});

/** Body outside, locknut inside. */
const ExternalConnector = () => (
  <g className="sheet-fitting">
    <rect x={-WALL - 15} y={-15} width={15} height={30} rx={2} />
    <path d={`M${-WALL - 10} -15v30M${-WALL - 5} -15v30`} />
    <rect x={0} y={-17} width={6} height={34} rx={1} />
  </g>
);

/** A saddle over the sheath inside; its screw tells a removable clamp from one that is part of the box. */
const Clamp = ({ withScrew }: { readonly withScrew: boolean }) => (
  <g className="sheet-fitting">
    <rect x={2} y={-14} width={16} height={28} rx={2} />
    {withScrew && <circle cx={10} cy={0} r={4.4} />}
    {withScrew && <path className="sheet-fitting-slot" d="M7.2 1.6l5.6 -3.2" />}
  </g>
);

/** Words of a sheath: its id, size and length inside it as a road carries its name, and where it goes, outside. */
export const SheathWords = memo(function SheathWords({
  sheath,
  fresh,
}: {
  readonly sheath: SheathDrawing;
  readonly fresh: boolean;
}) {
  const { wall, at, outer } = sheath;
  const upright = wall === "top" || wall === "bottom";
  const reach = Math.hypot(outer.x - at.x, outer.y - at.y);
  const out = wall === "left" || wall === "top" ? -1 : 1;
  const words = (
    <>
      <tspan className="sheet-sheath-name">{sheath.name}</tspan>
      <tspan dx={7}>{sheath.sizeText}</tspan>
      {sheath.lengthText !== "" && (
        <tspan className="sheet-quiet" dx={7}>
          {sheath.lengthText}
        </tspan>
      )}
    </>
  );
  if (upright) {
    const x = at.x + HALF + 7;
    const y = at.y + out * (reach - 10);
    return (
      <g>
        <text
          className="sheet-sheath-text"
          transform={`translate(${at.x + 4} ${at.y + out * (reach / 2 + 12)}) rotate(-90)`}
          textAnchor="middle"
        >
          {words}
        </text>
        <text className="sheet-caption-title" x={x} y={out < 0 ? y + 8 : y - 12}>
          {sheath.captionTitle}
        </text>
        <text className="sheet-caption-note" x={x} y={out < 0 ? y + 22 : y + 2}>
          {sheath.captionNote}
        </text>
      </g>
    );
  }
  const { x } = outer;
  const titleY = at.y - (sheath.captionNote === "" ? 17 : 31);
  const title = textWidth(sheath.captionTitle, 13, 700);
  const anchor = out < 0 ? "start" : "end";
  return (
    <g>
      <Letters of={sheathKey(sheath)} about={{ x: outer.x - out * 10, y: at.y }}>
        <text className="sheet-sheath-text" x={outer.x - out * 10} y={at.y + 4} textAnchor={anchor}>
          {words}
        </text>
      </Letters>
      <Letters of={captionKey(sheath)} about={{ x, y: at.y - 14 }}>
        {fresh && <NewFlag x={x - out * (title + 14)} y={titleY - 4} size={16} />}
        <text className="sheet-caption-title" x={x} y={titleY} textAnchor={anchor}>
          {sheath.captionTitle}
        </text>
        <text className="sheet-caption-note" x={x} y={at.y - 17} textAnchor={anchor}>
          {sheath.captionNote}
        </text>
      </Letters>
    </g>
  );
});
