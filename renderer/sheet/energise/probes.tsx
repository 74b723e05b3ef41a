import type { LeadPlace } from "../../../shared-model/answers/energised.ts";
import type { BoxDrawing, DeviceDrawing } from "../../../shared-model/geometry/box-drawing.ts";
import type { MiddleBox } from "../../../shared-model/geometry/middle-box.ts";
import type { Point } from "../../../shared-model/model/project.ts";
import { shownInstallation } from "../../state/document-store.ts";
import { energiseStore, type LeadName } from "../../state/energise/energise-store.ts";
import { useStore } from "../../state/use-store.ts";

/** The probes of the meter in a box that is seen from near. */
export function Probes({ drawing }: { readonly drawing: BoxDrawing }) {
  return <ProbesAt spotOf={(place) => spotOfLead(drawing, place)} size={1} />;
}

/** From middle distance: on the plate of a device, else in the middle of the box. */
export function ProbesAway({
  drawing,
  devices,
  unit,
}: {
  readonly drawing: BoxDrawing;
  readonly devices: MiddleBox["devices"];
  readonly unit: number;
}) {
  const spotOf = (place: LeadPlace): Point | undefined => {
    const on = place.kind === "device" ? devices.find(({ device }) => device === place.device) : undefined;
    if (on !== undefined) return middleOf(on.plate);
    return isIn(drawing, place) ? middleOf(drawing.bounds) : undefined;
  };
  return <ProbesAt spotOf={spotOf} size={unit} />;
}

const middleOf = ({ x, y, width, height }: BoxDrawing["bounds"]): Point => ({ x: x + width / 2, y: y + height / 2 });

function isIn({ enclosure: id }: BoxDrawing, place: LeadPlace): boolean {
  const enclosure = shownInstallation().enclosures[id];
  if (enclosure === undefined) return false;
  switch (place.kind) {
    case "splice":
      return place.splice in enclosure.splices;
    case "end":
      return place.end in enclosure.places;
    case "bond":
      return place.enclosure === id;
    case "panel":
      return place.panel === id;
    case "device":
      return place.device in enclosure.devices;
    case "earth":
      return false;
  }
}

interface ProbeSpots {
  spotOf(place: LeadPlace): Point | undefined;
  readonly size: number;
}

function ProbesAt({ spotOf, size }: ProbeSpots) {
  const leads = useStore(energiseStore, (state) => state.leads);
  return (["COM", "V"] as const).map((lead) => {
    const place = leads[lead];
    const at = place && spotOf(place);
    return at ? <Probe key={lead} lead={lead} at={at} size={size} /> : null;
  });
}

/** Red hangs from its place, black stands on it, so that their cords part. Its cord is drawn over the sheet, from the point that `data-lead` marks to the meter. */
function Probe({ lead, at: { x, y }, size }: { readonly lead: LeadName; readonly at: Point; readonly size: number }) {
  const side = lead === "V" ? 1 : -1;
  const turn = lead === "V" ? undefined : "scale(1 -1)";
  return (
    <g className={`sheet-probe sheet-probe-${lead}`} transform={`translate(${x} ${y}) scale(${size})`}>
      <path
        className="sheet-probe-body"
        transform={turn}
        d={`M0 0L${side * 14} 12L${side * 26} 32L${side * 16} 36L${side * 6} 18z`}
      />
      <circle className="sheet-probe-butt" data-lead={lead} cx={side * 21} cy={side * 34} r={1.5} />
      <text x={side * 34} y={lead === "V" ? 22 : -14} textAnchor={lead === "V" ? "start" : "end"}>
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
