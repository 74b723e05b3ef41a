import { memo, useMemo } from "react";
import type { Operable } from "../../../shared-model/answers/energised.ts";
import type { BoxDrawing, DeviceDrawing, SheathDrawing } from "../../../shared-model/geometry/box-drawing.ts";
import type { Enclosure } from "../../../shared-model/model/enclosure.ts";
import { shownInstallation } from "../../state/document-store.ts";
import { rounded } from "../../state/energise/energise-words.ts";
import { FOR_EYES_ONLY } from "../svg-roles.ts";
import { ConditionTag } from "./condition-tag.tsx";
import { cableCondition, type Lit } from "./lit.ts";
import { OperatedMarks } from "./operated-marks.tsx";
import { Probes } from "./probes.tsx";
import { tagSpot } from "./tag-spot.ts";

/** Tags on conductors, splices and the bond, how devices stand, and the probes of the meter: over everything that is drawn. */
export const LitLayer = memo(function LitLayer({
  enclosure,
  drawing,
  lit,
}: {
  readonly enclosure: Enclosure;
  readonly drawing: BoxDrawing;
  readonly lit: Lit;
}) {
  const spots = useMemo(() => drawing.conductors.map(tagSpot), [drawing]);
  const operables = lit.answer.operables.filter((one) => one.enclosure === enclosure.id);
  return (
    <g {...FOR_EYES_ONLY}>
      {drawing.conductors.map((conductor, i) => {
        const condition = lit.conductor(conductor);
        const at = spots[i];
        return condition && at ? (
          <ConditionTag key={conductor.ends[0] ?? i} condition={condition} x={at.x} y={at.y} />
        ) : null;
      })}
      {drawing.sheaths.map((sheath) => (
        <SheathVolts key={`${sheath.cable} ${sheath.side}`} sheath={sheath} lit={lit} />
      ))}
      {drawing.devices.map((device) => (
        <OperatedMarks key={device.device} device={device} operables={operablesOn(operables, device)} />
      ))}
      <Probes drawing={drawing} />
    </g>
  );
});

/** Under a cable that enters from the side: its gravest condition, and volts to ground where it has any. */
function SheathVolts({ sheath, lit }: { readonly sheath: SheathDrawing; readonly lit: Lit }) {
  const { cable, wall, at, outer } = sheath;
  const condition = cableCondition(lit.answer, cable, shownInstallation().cables[cable]);
  if (condition === undefined || wall === "top" || wall === "bottom") return null;
  const inward = wall === "left" ? 1 : -1;
  const y = at.y + 22;
  return (
    <g className="sheet-sheath-volts">
      <ConditionTag condition={condition} x={outer.x + inward * 12} y={y} />
      <text x={outer.x + inward * 24} y={y + 4} textAnchor={wall === "left" ? "start" : "end"}>
        {condition.kind === "floating" ? `~${condition.volts.toFixed(0)} V` : `${rounded(condition.volts)} V`}
      </text>
    </g>
  );
}

const operablesOn = (operables: readonly Operable[], { device }: DeviceDrawing): readonly Operable[] =>
  operables.filter((one) => one.device === device);
