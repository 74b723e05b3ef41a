import { memo, useMemo } from "react";
import type { LeadPlace, Operable } from "../../../shared-model/answers/energised.ts";
import type { BoxDrawing, DeviceDrawing, SheathDrawing } from "../../../shared-model/geometry/box-drawing.ts";
import type { Enclosure } from "../../../shared-model/model/enclosure.ts";
import type { Point } from "../../../shared-model/model/project.ts";
import { shownInstallation } from "../../state/document-store.ts";
import { energiseStore, type LeadName } from "../../state/energise/energise-store.ts";
import { rounded } from "../../state/energise/energise-words.ts";
import { useStore } from "../../state/use-store.ts";
import { FOR_EYES_ONLY } from "../svg-roles.ts";
import { ConditionTag } from "./condition-tag.tsx";
import { cableCondition, type Lit } from "./lit.ts";
import { OperatedMarks } from "./operated-marks.tsx";
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

function Probes({ drawing }: { readonly drawing: BoxDrawing }) {
  const leads = useStore(energiseStore, (state) => state.leads);
  return (["COM", "V"] as const).map((lead) => {
    const place = leads[lead];
    const at = place && spotOfLead(drawing, place);
    return at ? <Probe key={lead} lead={lead} at={at} /> : null;
  });
}

function Probe({ lead, at: { x, y } }: { readonly lead: LeadName; readonly at: Point }) {
  const side = lead === "V" ? 1 : -1;
  return (
    <g className={`sheet-probe sheet-probe-${lead}`} transform={`translate(${x} ${y})`}>
      <path className="sheet-probe-cord" d={`M${side * 22} 30q${side * 16} 26 ${side * 44} 24`} />
      <path className="sheet-probe-body" d={`M0 0L${side * 14} 12L${side * 26} 32L${side * 16} 36L${side * 6} 18z`} />
      <text x={side * 34} y={22} textAnchor={lead === "V" ? "start" : "end"}>
        {lead}
      </text>
    </g>
  );
}

/** Where a place for a lead is drawn in this box; undefined where it is not in it. */
function spotOfLead(drawing: BoxDrawing, place: LeadPlace): Point | undefined {
  switch (place.kind) {
    case "splice": {
      const splice = drawing.splices.find((one) => one.splice === place.splice);
      return splice && { x: splice.x, y: splice.rows[0]?.y ?? splice.freeRow.y };
    }
    case "end": {
      const conductor = drawing.conductors.find(({ ends }) => ends.includes(place.end));
      return conductor?.grips[conductor.ends.indexOf(place.end)];
    }
    case "bond":
      return place.enclosure === drawing.enclosure ? drawing.bond?.at : undefined;
    case "device": {
      const device = drawing.devices.find((one) => one.device === place.device);
      const terminal = device?.terminals.find((one) => one.terminal === place.node);
      return terminal?.screw ?? (device && slotOf(device, place.node));
    }
    default:
      return undefined;
  }
}

/** A contact of a face: its upper or lower half, hot right of the middle, neutral left, ground below. */
function slotOf({ face }: DeviceDrawing, node: string): Point {
  const [half = "", letter = ""] = node;
  const x = face.x + face.width / 2 + (letter === "H" ? 8 : letter === "N" ? -8 : 0);
  const y = face.y + face.height / 2 + (half === "L" ? 38 : -42) + (letter === "G" ? 12 : 0);
  return { x, y };
}
