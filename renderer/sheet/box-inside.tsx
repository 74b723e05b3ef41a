import { memo, useMemo } from "react";
import type { BoxRoles } from "../../shared-model/answers/circuit.ts";
import type { BoxDrawing, ConductorDrawing, SheathDrawing } from "../../shared-model/geometry/box-drawing.ts";
import { isSheathBehind, protectedLimits } from "../../shared-model/geometry/protected-limit.ts";
import { type DeviceId, type EndKey, otherSide } from "../../shared-model/model/ids.ts";
import type { Installation } from "../../shared-model/model/project.ts";
import { shownInstallation } from "../state/document-store.ts";
import type { BoxDifference } from "./difference.ts";
import { BondShape, CapShape } from "./draw/bond-and-caps.tsx";
import { ConductorLine } from "./draw/conductor-line.tsx";
import { DeviceShape } from "./draw/device-shape.tsx";
import { FreeSlot } from "./draw/free-slot.tsx";
import { LimitShape } from "./draw/limit-shape.tsx";
import { CodePlate } from "./draw/plates.tsx";
import { SheathShape, SheathWords } from "./draw/sheath-shape.tsx";
import { SpliceShape } from "./draw/splice-shape.tsx";
import type { Lit } from "./energise/lit.ts";
import { FOR_EYES_ONLY } from "./svg-roles.ts";
import { wording } from "./words.ts";

export interface Inside {
  readonly drawing: BoxDrawing;
  /** Keys of what is chosen in this box: "device d1", "end c1.bk.a". One text, so that nothing renders for nothing. */
  readonly chosen: string;
  readonly lifted: EndKey | undefined;
  /** A held end may join any splice, so that each grows a free row. */
  readonly growing: boolean;
  readonly difference: BoxDifference;
  readonly roles: BoxRoles | undefined;
  /** Outlets that the devices here protect elsewhere: "d1 R2, R3", a device a line. */
  readonly protects: string;
  /** While the drawing is energised. */
  readonly lit?: Lit | undefined;
  /** Of a drawing that is not open. */
  readonly cables?: Installation["cables"];
}

/** Read, not watched: a cable that is routed anew gives another drawing. */
const goesOut = ({ cable, side }: SheathDrawing, { cables }: Pick<Installation, "cables">): boolean => {
  const far = cables[cable]?.sides[otherSide(side)];
  return far !== undefined && !("enclosure" in far);
};

/** Grounds lie at the back as they are folded, neutrals above them, hots on top. */
const depth = ({ grounding, colour }: ConductorDrawing): number =>
  grounding ? 0 : colour === "white" || colour === "grey" ? 1 : 2;

/** "behind R1b: R2, R3, R5"; the device alone where nothing else hangs on it yet. */
function limitWords(drawing: BoxDrawing, device: DeviceId, protects: Inside["protects"]): string {
  const name = drawing.devices.find((each) => each.device === device)?.name ?? "";
  const outlets = protects.split("\n").find((line) => line.startsWith(`${device} `));
  return outlets === undefined ? wording.behind(name) : wording.behind2(name, outlets.slice(device.length + 1));
}

/** Everything inside a box and its cable stubs, in drawing order. */
export const BoxInside = memo(function BoxInside({
  drawing,
  chosen,
  lifted,
  growing,
  difference,
  roles,
  protects,
  lit,
  cables,
}: Inside) {
  const wiring = cables === undefined ? shownInstallation() : { cables };
  const conductors = useMemo(() => [...drawing.conductors].sort((a, b) => depth(a) - depth(b)), [drawing]);
  const behind = roles?.behind;
  const limits = useMemo(() => (behind ? protectedLimits(drawing, behind) : []), [drawing, behind]);
  const picks = useMemo(() => new Set(chosen === "" ? [] : chosen.split("\n")), [chosen]);
  const stateOf = ({ ends, jumper }: ConductorDrawing) => {
    if (lifted !== undefined && ends.includes(lifted)) return "lifted";
    const picked =
      ends.some((end) => picks.has(`end ${end}`)) || (jumper !== undefined && picks.has(`jumper ${jumper}`));
    return picked ? "selected" : "plain";
  };
  return (
    <g {...FOR_EYES_ONLY}>
      {drawing.freeSlots?.map(({ slot, at }) => (
        <FreeSlot key={slot} slot={slot} at={at} />
      ))}
      {limits.map((limit, i) => (
        <LimitShape
          key={`${limit.device} ${limit.area.y}`}
          limit={limit}
          words={limits[i - 1]?.device === limit.device ? undefined : limitWords(drawing, limit.device, protects)}
        />
      ))}
      {drawing.sheaths.map((sheath) => (
        <g
          key={`${sheath.cable}.${sheath.side}`}
          className={picks.has(`cable ${sheath.cable}`) ? "sheet-chosen" : undefined}
        >
          <SheathShape
            sheath={sheath}
            torn={goesOut(sheath, wiring)}
            guarded={behind !== undefined && isSheathBehind(drawing, sheath, (end) => behind[end] !== undefined)}
            fresh={difference.newCables.has(sheath.cable)}
          />
        </g>
      ))}
      {conductors.map((conductor) => (
        <ConductorLine
          key={conductor.ends[0]}
          conductor={conductor}
          state={stateOf(conductor)}
          condition={lit?.conductor(conductor)}
        />
      ))}
      {drawing.caps.map((cap) => (cap.end === lifted ? null : <CapShape key={cap.end} cap={cap} />))}
      {conductors.map((conductor) =>
        conductor.plates.map((plate) => (
          <CodePlate key={`${conductor.ends[0]} ${plate.at.x} ${plate.at.y}`} plate={plate} />
        )),
      )}
      {drawing.splices.map((splice) => (
        <g key={splice.splice} className={lit && `sheet-lit-${lit.box.splices[splice.splice]?.kind}`}>
          <SpliceShape
            splice={splice}
            chosen={picks.has(`splice ${splice.splice}`)}
            lifted={splice.rows.some((row) => row.end === lifted) ? lifted : undefined}
            growing={growing}
            role={roles?.splices[splice.splice]}
            fresh={difference.newSplices.has(splice.splice)}
          />
        </g>
      ))}
      {drawing.devices.map((device) => (
        <DeviceShape
          key={device.device}
          device={device}
          chosen={picks.has(`device ${device.device}`)}
          fresh={difference.newDevices.has(device.device) || difference.replaces.has(device.device)}
          replaces={difference.replaces.get(device.device)}
        />
      ))}
      {drawing.bond && <BondShape bond={drawing.bond} chosen={false} />}
      {drawing.rings.map((ring) => (
        <text key={ring.id} className="sheet-ring-text" x={ring.at.x} y={ring.at.y}>
          {ring.text}
        </text>
      ))}
      {drawing.sheaths.map((sheath) => (
        <SheathWords
          key={`${sheath.cable}.${sheath.side}`}
          sheath={sheath}
          fresh={difference.newCables.has(sheath.cable)}
        />
      ))}
    </g>
  );
});
