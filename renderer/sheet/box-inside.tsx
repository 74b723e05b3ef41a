import { memo, useMemo } from "react";
import type { BoxDrawing, ConductorDrawing, SheathDrawing } from "../../shared-model/geometry/box-drawing.ts";
import { type EndKey, otherSide } from "../../shared-model/model/ids.ts";
import { shownInstallation } from "../state/document-store.ts";
import { BondShape, CapShape } from "./draw/bond-and-caps.tsx";
import { ConductorLine } from "./draw/conductor-line.tsx";
import { DeviceShape } from "./draw/device-shape.tsx";
import { CodePlate } from "./draw/plates.tsx";
import { SheathShape, SheathWords } from "./draw/sheath-shape.tsx";
import { SpliceShape } from "./draw/splice-shape.tsx";
import { FOR_EYES_ONLY } from "./svg-roles.ts";

interface Inside {
  readonly drawing: BoxDrawing;
  /** Keys of what is chosen in this box: "device d1", "end c1.bk.a". One text, so that nothing renders for nothing. */
  readonly chosen: string;
  readonly lifted: EndKey | undefined;
  /** A held end may join any splice, so that each grows a free row. */
  readonly growing: boolean;
}

/** Read, not watched: a cable that is routed anew gives another drawing. */
const goesOut = ({ cable, side }: SheathDrawing): boolean => {
  const far = shownInstallation().cables[cable]?.sides[otherSide(side)];
  return far !== undefined && !("enclosure" in far);
};

/** Grounds lie at the back as they are folded, neutrals above them, hots on top. */
const depth = ({ grounding, colour }: ConductorDrawing): number =>
  grounding ? 0 : colour === "white" || colour === "grey" ? 1 : 2;

/** Everything inside a box and its cable stubs, in drawing order. */
export const BoxInside = memo(function BoxInside({ drawing, chosen, lifted, growing }: Inside) {
  const conductors = useMemo(() => [...drawing.conductors].sort((a, b) => depth(a) - depth(b)), [drawing]);
  const picks = useMemo(() => new Set(chosen === "" ? [] : chosen.split("\n")), [chosen]);
  const stateOf = ({ ends, jumper }: ConductorDrawing) => {
    if (lifted !== undefined && ends.includes(lifted)) return "lifted";
    const picked =
      ends.some((end) => picks.has(`end ${end}`)) || (jumper !== undefined && picks.has(`jumper ${jumper}`));
    return picked ? "selected" : "plain";
  };
  return (
    <g {...FOR_EYES_ONLY}>
      {drawing.sheaths.map((sheath) => (
        <g
          key={`${sheath.cable}.${sheath.side}`}
          className={picks.has(`cable ${sheath.cable}`) ? "sheet-chosen" : undefined}
        >
          <SheathShape sheath={sheath} torn={goesOut(sheath)} />
        </g>
      ))}
      {conductors.map((conductor) => (
        <ConductorLine key={conductor.ends[0]} conductor={conductor} state={stateOf(conductor)} />
      ))}
      {drawing.caps.map((cap) => (cap.end === lifted ? null : <CapShape key={cap.end} cap={cap} />))}
      {conductors.map((conductor) =>
        conductor.plates.map((plate) => (
          <CodePlate key={`${conductor.ends[0]} ${plate.at.x} ${plate.at.y}`} plate={plate} />
        )),
      )}
      {drawing.splices.map((splice) => (
        <SpliceShape
          key={splice.splice}
          splice={splice}
          chosen={picks.has(`splice ${splice.splice}`)}
          lifted={splice.rows.some((row) => row.end === lifted) ? lifted : undefined}
          growing={growing}
        />
      ))}
      {drawing.devices.map((device) => (
        <DeviceShape key={device.device} device={device} chosen={picks.has(`device ${device.device}`)} />
      ))}
      {drawing.bond && <BondShape bond={drawing.bond} chosen={false} />}
      {drawing.rings.map((ring) => (
        <text key={ring.id} className="sheet-ring-text" x={ring.at.x} y={ring.at.y}>
          {ring.text}
        </text>
      ))}
      {drawing.sheaths.map((sheath) => (
        <SheathWords key={`${sheath.cable}.${sheath.side}`} sheath={sheath} />
      ))}
    </g>
  );
});
