import { findCableItem } from "../../shared-model/catalog/cable-items.ts";
import { getDeviceType } from "../../shared-model/catalog/device-types.ts";
import type { Cable } from "../../shared-model/model/cable.ts";
import type { Device } from "../../shared-model/model/device.ts";
import type { Box, Entry, Jumper, Panel, Splice } from "../../shared-model/model/enclosure.ts";
import {
  asId,
  type CableId,
  type ConductorKey,
  cableEnd,
  type DeviceId,
  type EnclosureId,
  type EndKey,
  type EntryId,
  type JumperId,
  jumperEnd,
  type RoomId,
  type SpliceId,
  type TerminalName,
} from "../../shared-model/model/ids.ts";
import type { At, Place } from "../../shared-model/model/place.ts";
import { emptyInstallation, emptyProject, type Point, type Project } from "../../shared-model/model/project.ts";
import { amps, feet } from "../../shared-model/units/quantity.ts";
import { cubicInches } from "../../shared-model/units/volume.ts";

/** Boxes of one circuit, in a chain from its breaker. */
const BOXES_PER_CIRCUIT = 20;
const CIRCUITS_PER_PANEL = 40;

/**
 * An invented building of a given number of boxes: chains of twenty boxes, each with two duplex receptacles on pigtails,
 * and one breaker a chain, forty breakers a panel. Ten conductors a box: a 12/3 cable of four, its red capped for later, and six jumpers.
 */
export function bigHouse(boxes: number, perCircuit = BOXES_PER_CIRCUIT): Project {
  const circuits = Math.ceil(boxes / perCircuit);
  const project = emptyProject(`A building of ${boxes} boxes`, 2020);
  const item = findCableItem("nm-12-3-g");
  if (item === undefined) throw new Error("The catalogue has no 12/3 cable.");
  const cables: Record<CableId, Cable> = {};
  const enclosures: Record<EnclosureId, Box | Panel> = {};
  const positions: Record<EnclosureId, Point> = {};
  for (let first = 0; first < circuits; first += CIRCUITS_PER_PANEL) {
    const panel = housePanel(
      first / CIRCUITS_PER_PANEL,
      Math.min(CIRCUITS_PER_PANEL, circuits - first),
      first,
      perCircuit,
    );
    enclosures[panel.id] = panel;
    positions[panel.id] = { x: 0, y: 900 * first };
  }
  for (let circuit = 0; circuit < circuits; circuit++) {
    const panel = asId<EnclosureId>(`p${Math.floor(circuit / CIRCUITS_PER_PANEL)}`);
    const inThis = Math.min(perCircuit, boxes - circuit * perCircuit);
    for (let step = 0; step < inThis; step++) {
      const number = circuit * perCircuit + step;
      const id = asId<EnclosureId>(`b${number}`);
      const cable = asId<CableId>(`c${number}`);
      const from: EnclosureId = step === 0 ? panel : asId<EnclosureId>(`b${number - 1}`);
      const out = asId<EntryId>(step === 0 ? `${panel}-e${circuit}` : `b${number - 1}-out`);
      cables[cable] = {
        id: cable,
        name: `C${number + 1}`,
        item: item.id,
        construction: item.construction,
        conductors: item.conductors,
        sides: {
          a: { enclosure: from, entry: out },
          b: { enclosure: id, entry: asId<EntryId>(`b${number}-in`) },
        },
        lengthFt: feet(10),
        order: number,
      };
      enclosures[id] = houseBox(id, number, cable, step < inThis - 1 ? asId<CableId>(`c${number + 1}`) : undefined);
      positions[id] = { x: 1250 * (step + 1), y: 900 * circuit };
    }
  }
  const room = asId<RoomId>("room-1");
  return {
    ...project,
    rooms: { [room]: { id: room, name: "Hall", kinds: ["hallway"], order: 0 } },
    asFound: { ...emptyInstallation, enclosures, cables },
    layout: { ...project.layout, enclosures: positions },
  };
}

function housePanel(number: number, circuits: number, firstCircuit: number, perCircuit: number): Panel {
  const id = asId<EnclosureId>(`p${number}`);
  const neutralBar = asId<DeviceId>(`${id}-n`);
  const groundBar = asId<DeviceId>(`${id}-g`);
  const entries: Record<EntryId, Entry> = {};
  const places: Record<EndKey, Place> = {};
  const devices: Record<DeviceId, Device> = {
    [neutralBar]: { id: neutralBar, name: "N", type: "neutral-bar", order: 0 },
    [groundBar]: { id: groundBar, name: "G", type: "ground-bar", order: 1 },
  };
  for (let index = 0; index < circuits; index++) {
    const breaker = asId<DeviceId>(`${id}-k${index}`);
    devices[breaker] = {
      id: breaker,
      name: `${index + 1}`,
      type: "breaker-1",
      order: index + 2,
      slot: index + 1,
      breakerRatingA: amps(20),
      legs: [index % 2 === 0 ? "A" : "B"],
    };
    const entry = asId<EntryId>(`${id}-e${firstCircuit + index}`);
    entries[entry] = { id: entry, means: "external-connector", order: index };
    const cable = asId<CableId>(`c${(firstCircuit + index) * perCircuit}`);
    const land = (conductor: string, at: At) => {
      places[cableEnd(cable, conductor as ConductorKey, "a")] = { at };
    };
    land("bk", onTerminal(breaker, "OUT", 1));
    land("wh", onTerminal(neutralBar, "BAR", index + 1));
    land("cu", onTerminal(groundBar, "BAR", index + 1));
    land("rd", { kind: "capped" });
  }
  return {
    id,
    name: `P${number + 1}`,
    item: "panel-30",
    kind: "panel",
    spaces: 42,
    supply: "service",
    mainBond: "here",
    entries,
    devices,
    splices: {},
    jumpers: {},
    passThroughs: {},
    places,
    order: number,
  };
}

const onTerminal = (device: DeviceId, terminal: string, hole: number): At => ({
  kind: "terminal",
  device,
  terminal: terminal as TerminalName,
  hole,
});

function houseBox(id: EnclosureId, number: number, into: CableId, onward: CableId | undefined): Box {
  const entries: Record<EntryId, Entry> = {};
  const places: Record<EndKey, Place> = {};
  const splices: Record<SpliceId, Splice> = {};
  const jumpers: Record<JumperId, Jumper> = {};
  const devices: Record<DeviceId, Device> = {};
  const entry = (name: string, order: number) => {
    const key = asId<EntryId>(`${id}-${name}`);
    entries[key] = { id: key, means: "internal-clamp", order };
  };
  entry("in", 0);
  if (onward !== undefined) entry("out", 1);

  const receptacles = [0, 1].map((order) => {
    const device = asId<DeviceId>(`${id}-r${order}`);
    const name = `R${2 * number + order + 1}`;
    const type = getDeviceType("receptacle-tr-15");
    devices[device] = { ...type.defaults, id: device, name, type: type.id, order };
    return device;
  });
  const joints = [
    { name: "X", conductor: "bk", terminal: "H1", colour: "black" },
    { name: "Y", conductor: "wh", terminal: "N1", colour: "white" },
    { name: "Z", conductor: "cu", terminal: "G", colour: "bare" },
  ] as const;
  joints.forEach(({ name, conductor, terminal, colour }, order) => {
    const splice = asId<SpliceId>(`${id}-${name.toLowerCase()}`);
    splices[splice] = { id: splice, name, connector: "twist-large", order };
    const joined: At = { kind: "splice", splice };
    places[cableEnd(into, conductor as ConductorKey, "b")] = { at: joined };
    if (onward !== undefined) places[cableEnd(onward, conductor as ConductorKey, "a")] = { at: joined };
    for (const device of receptacles) {
      const jumper = asId<JumperId>(`${device}-${conductor}`);
      jumpers[jumper] = {
        id: jumper,
        name: `${name}${order}`,
        awg: "12",
        colour,
        material: "copper",
        stranded: false,
        order: Object.keys(jumpers).length,
      };
      places[jumperEnd(jumper, "a")] = { at: joined };
      places[jumperEnd(jumper, "b")] = { at: onTerminal(device, terminal, 1) };
    }
  });
  places[cableEnd(into, "rd" as ConductorKey, "b")] = { at: { kind: "capped" }, spare: true };
  if (onward !== undefined)
    places[cableEnd(onward, "rd" as ConductorKey, "a")] = { at: { kind: "capped" }, spare: true };
  return {
    id,
    name: `B${number + 1}`,
    item: "plastic-new-2",
    kind: "box",
    material: "nonmetallic",
    shape: "device",
    volume: { kind: "marked", volumeIn3: cubicInches(34) },
    rings: {},
    internalClamps: "none",
    supports: [],
    gangs: 2,
    roomId: asId<RoomId>("room-1"),
    entries,
    devices,
    splices,
    jumpers,
    passThroughs: {},
    places,
    order: number + 1,
  };
}
