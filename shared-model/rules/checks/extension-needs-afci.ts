import { catalogue, type Part, templates } from "../../lib/catalogue.ts";
import type { Cable } from "../../model/cable.ts";
import type { Device } from "../../model/device.ts";
import type { Enclosure } from "../../model/enclosure.ts";
import type { RoomKind } from "../../model/room.ts";
import { cableOfEnd } from "../../queries/end-facts.ts";
import { inOrder } from "../../queries/in-order.ts";
import { arcFaultPlacesOf, detectsArcs } from "../arc-fault.ts";
import { exceeds, figure } from "../circuit-uses.ts";
import { isNewCable, workAt } from "../new-work.ts";
import { defineRule, type SectionContext } from "../rule.ts";
import { basisOf, everyJudgedEdition, fillIn, listed, marksOn, subject } from "../rule-parts.ts";

const messages = templates({
  devices:
    "The circuit of {breaker} in {panel} is extended in a room of the arc-fault list by {what}, and nothing before it detects arcs: extending it there calls for arc-fault protection. Fit it at the start of the circuit, or an outlet type at its first receptacle.",
  long: "The circuit of {breaker} in {panel} is extended in a room of the arc-fault list by {feet} ft of cable ({cables}); up to {free} ft without a new outlet or device need no arc-fault protection. Fit it at the start of the circuit, or an outlet type at its first receptacle.",
  lengthUnknown:
    "Cannot tell whether the extension of the circuit of {breaker} in {panel} needs arc-fault protection: the length of {cables} is not recorded, and more than {free} ft calls for it. Enter it.",
});

const wording = catalogue({
  fedBy: (devices: Part, cables: Part) => `${devices}, fed by ${cables}`,
  lengthOf: (cables: Part) => `the length of ${cables}`,
});

/** New cables, and devices that come where none was; what only takes the place of another does not count. */
export const extensionNeedsAfci = defineRule({
  id: "extension-needs-afci",
  status: "draft",
  scope: "section",
  severity: "violation",
  summary: "A circuit that is extended in a room of the arc-fault list must get arc-fault protection.",
  why: "One more outlet in a bedroom or a laundry brings the whole circuit under today's rule. Up to 6 ft of further conductor with no new outlet or device, as where a panel or a box is moved, stay free of it; from 2023 on a device that only splices does not count as one. A new circuit into such a room needs it just as well. Only rooms of the list count: an extension that stays in a bathroom or in an unfinished basement does not. Length inside boxes is not recorded apart and counts with the cable.",
  messages,
  sections: everyJudgedEdition("210.12(D)", "sourced", { 2023: { section: "210.12(E)", confidence: "sourced" } }),
  values: ["arcFaultPlaces", "arcFaultToA", "extensionFreeFt"],
  check(context) {
    const { section, edition, state, report, cannotTell } = context;
    const { arcFaultToA, extensionFreeFt } = edition.values;
    if (state === "as-found" || arcFaultToA === undefined || extensionFreeFt === undefined) return;
    const added = addedIn(context);
    if (added.cables.length + added.devices.length === 0) return;
    for (const { device: breaker, panel } of section.breakers()) {
      const rating = breaker.breakerRatingA;
      if (detectsArcs(breaker) || (rating !== undefined && rating > arcFaultToA.value)) continue;
      const onCircuit = ofCircuit(context, breaker);
      const cables = added.cables.filter((cable) => onCircuit.cables.has(cable));
      const devices = added.devices.filter(({ device }) => onCircuit.devices.has(device.id));
      const listedBoxes = [...boxesOf(context, cables), ...devices.map(({ enclosure }) => enclosure)].some(
        (box) => placesIn(context, box).length > 0,
      );
      const inList = listedBoxes || devices.some(({ places }) => places.length > 0);
      if (!inList || isBehindArcFault(context, breaker, devices, cables)) continue;
      const subjects = [subject("device", breaker)];
      const shown = { breaker: breaker.name, panel: panel.name, free: extensionFreeFt.value };
      const basis = basisOf(
        devices.flatMap(({ enclosure, device }) => [...marksOn(enclosure, "roomId"), ...marksOn(device, "zones")]),
        cables.flatMap((cable) => marksOn(cable, "lengthFt")),
      );
      const names = listed(cables.map(({ name }) => name));
      const feet = cables.reduce((sum, { lengthFt = 0 }) => sum + lengthFt, 0);
      if (devices.length > 0) {
        const said = listed(devices.map(({ device }) => device.name));
        const what = cables.length === 0 ? said : wording.fedBy(said, names);
        report({
          subjects,
          message: fillIn(messages.devices, { ...shown, what }),
          data: { devices: devices.length, feet: Number(figure(feet)) },
          ...basis,
        });
        continue;
      }
      if (exceeds(feet, extensionFreeFt.value)) {
        report({
          subjects,
          message: fillIn(messages.long, { ...shown, feet: figure(feet), cables: names }),
          data: { devices: 0, feet: Number(figure(feet)) },
          ...basis,
        });
        continue;
      }
      const unmeasured = cables.filter(({ lengthFt }) => lengthFt === undefined);
      const [first] = unmeasured;
      if (first === undefined) continue;
      const unknown = listed(unmeasured.map(({ name }) => name));
      cannotTell({
        subjects,
        message: fillIn(messages.lengthUnknown, { ...shown, cables: unknown }),
        missing: wording.lengthOf(unknown),
        enterAt: subject("cable", first),
      });
    }
  },
});

interface AddedDevice {
  readonly device: Device;
  readonly enclosure: Enclosure;
  readonly places: readonly RoomKind[];
}

interface Added {
  readonly cables: readonly Cable[];
  readonly devices: readonly AddedDevice[];
}

function addedIn(context: SectionContext): Added {
  const { section, project, edition } = context;
  const devices = section.enclosures.flatMap((enclosure) =>
    inOrder(enclosure.devices)
      .filter((device) => workAt(context, enclosure, device).kind === "new")
      .map((device) => ({ device, enclosure, places: arcFaultPlacesOf(project, enclosure, device, edition) })),
  );
  return { cables: section.cables.filter((cable) => isNewCable(context, cable)), devices };
}

/** Cables with a hot of the circuit, and devices that a hot of it reaches. */
function ofCircuit({ section }: SectionContext, breaker: Device) {
  const cables = new Set<Cable>();
  const devices = new Set<string>();
  for (const end of section.circuitOf(breaker.id).hotEnds) {
    const cable = cableOfEnd(section.installation, end);
    if (cable !== undefined) cables.add(cable);
    for (const { places } of section.enclosures) {
      const at = places[end]?.at;
      if (at?.kind === "terminal") devices.add(at.device);
    }
  }
  return { cables, devices };
}

const boxesOf = ({ section }: SectionContext, cables: readonly Cable[]): readonly Enclosure[] => {
  const ids = new Set<string>();
  for (const { sides } of cables)
    for (const side of [sides.a, sides.b]) if ("enclosure" in side) ids.add(side.enclosure);
  return section.enclosures.filter(({ id }) => ids.has(id));
};

const placesIn = ({ project, edition }: SectionContext, { roomId }: Enclosure): readonly RoomKind[] => {
  const kinds = (roomId === undefined ? undefined : project.rooms[roomId])?.kinds ?? [];
  return kinds.filter((kind) => edition.values.arcFaultPlaces?.value.includes(kind));
};

/** All that is added gets its hot through a receptacle that detects arcs. */
function isBehindArcFault(
  { section }: SectionContext,
  breaker: Device,
  devices: readonly AddedDevice[],
  cables: readonly Cable[],
): boolean {
  const detecting = section
    .sensingDevices()
    .filter(({ device, enclosure }) => enclosure.kind === "box" && detectsArcs(device));
  if (detecting.length === 0) return false;
  const hotEnds = section.circuitOf(breaker.id).hotEnds;
  return detecting.some(({ device: detector }) => {
    const open = section.contactsOpen(detector.id);
    const added = new Set<string>(devices.map(({ device }) => device.id).filter((id) => id !== detector.id));
    return hotEnds.every((end) => {
      const cable = cableOfEnd(section.installation, end);
      const isAdded = cable !== undefined && cables.includes(cable);
      const holder = section.enclosures.find(({ places }) => end in places);
      const at = holder?.places[end]?.at;
      const isAtAdded = at?.kind === "terminal" && added.has(at.device);
      const isAtDetector = at?.kind === "terminal" && at.device === detector.id;
      return (!isAdded && !isAtAdded) || isAtDetector || !open.isLive({ end });
    });
  });
}
