import { getDeviceType } from "../../shared-model/catalog/device-types.ts";
import type { Device } from "../../shared-model/model/device.ts";
import type { Enclosure, Jumper } from "../../shared-model/model/enclosure.ts";
import {
  asId,
  type DeviceId,
  type EndKey,
  type JumperId,
  jumperEnd,
  type SpliceId,
  type TerminalName,
} from "../../shared-model/model/ids.ts";
import type { At, Place } from "../../shared-model/model/place.ts";
import type { Project } from "../../shared-model/model/project.ts";
import { bigHouse } from "./big-house.ts";

/** Every fifth box has its second receptacle behind a switch. */
const SWITCH_EVERY = 5;

/**
 * The house of the other measurements with protection: in every second circuit a ground-fault receptacle in the first box
 * has all the rest on its LOAD; in the others the breaker senses, with the white on it. Some receptacles are switched.
 */
export function guardedHouse(boxes: number, perCircuit = 20): Project {
  const project = bigHouse(boxes, perCircuit);
  const enclosures: Record<string, Enclosure> = {};
  for (const enclosure of Object.values(project.asFound.enclosures)) {
    const number = Number(enclosure.id.slice(1));
    const isGuarded = number % perCircuit === 0 && (number / perCircuit) % 2 === 0;
    if (enclosure.kind === "panel") enclosures[enclosure.id] = withSensingBreakers(enclosure, perCircuit);
    else if (isGuarded) enclosures[enclosure.id] = withDeviceBefore(enclosure, number);
    else enclosures[enclosure.id] = number % SWITCH_EVERY === 1 ? withSwitch(enclosure) : enclosure;
  }
  return { ...project, asFound: { ...project.asFound, enclosures } };
}

/** A box that is being changed: its tables by plain text. */
interface Changed {
  readonly devices: Record<string, Device>;
  readonly splices: Record<string, Enclosure["splices"][SpliceId]>;
  readonly jumpers: Record<string, Jumper>;
  readonly places: Record<string, Place>;
}

function changed(enclosure: Enclosure, change: (tables: Changed) => void): Enclosure {
  const { devices, splices, jumpers, places } = enclosure;
  const tables = { devices: { ...devices }, splices: { ...splices }, jumpers: { ...jumpers }, places: { ...places } };
  change(tables);
  return { ...enclosure, ...tables } as Enclosure;
}

const deviceOf = (id: string, type: string, order: number): Device => ({
  ...getDeviceType(type).defaults,
  id: asId<DeviceId>(id),
  name: id,
  type,
  order,
});

const onTerminal = (device: string, terminal: string): At => ({
  kind: "terminal",
  device: asId<DeviceId>(device),
  terminal: terminal as TerminalName,
  hole: 1,
});

function addJumper({ jumpers, places }: Changed, id: string, from: At, to: At): void {
  const made = { awg: "12", colour: "black", material: "copper", stranded: false } as const;
  jumpers[id] = { ...made, id: asId<JumperId>(id), name: id, order: Object.keys(jumpers).length };
  places[jumperEnd(asId<JumperId>(id), "a")] = { at: from };
  places[jumperEnd(asId<JumperId>(id), "b")] = { at: to };
}

/** The supply stays on the splices and on LINE; what goes on, and the other receptacle, come to new splices on LOAD. */
function withDeviceBefore(box: Enclosure, number: number): Enclosure {
  const [device, other] = [`${box.id}-r0`, `${box.id}-r1`];
  return changed(box, (tables) => {
    tables.devices[device] = deviceOf(device, "gfci-receptacle-15", 0);
    for (const [conductor, letter] of [
      ["bk", "H"],
      ["wh", "N"],
    ] as const) {
      const behind: At = { kind: "splice", splice: asId<SpliceId>(`${box.id}-${letter}D`) };
      const order = Object.keys(tables.splices).length;
      tables.splices[behind.splice] = { id: behind.splice, name: `${letter}D`, connector: "twist-large", order };
      tables.places[`${device}-${conductor}.b`] = { at: onTerminal(device, `LINE_${letter}`) };
      tables.places[`${other}-${conductor}.a`] = { at: behind };
      const onward = `c${number + 1}.${conductor}.a` as EndKey;
      if (onward in tables.places) tables.places[onward] = { at: behind };
      addJumper(tables, `${box.id}-load-${letter}`, onTerminal(device, `LOAD_${letter}`), behind);
    }
  });
}

function withSwitch(box: Enclosure): Enclosure {
  const [device, lamp] = [`${box.id}-s`, `${box.id}-r1`];
  return changed(box, (tables) => {
    tables.devices[device] = deviceOf(device, "switch-single-pole", 2);
    tables.places[`${lamp}-bk.b`] = { at: onTerminal(device, "C") };
    addJumper(tables, `${box.id}-leg`, onTerminal(device, "L"), onTerminal(lamp, "H1"));
  });
}

function withSensingBreakers(panel: Enclosure, perCircuit: number): Enclosure {
  return changed(panel, (tables) => {
    for (const [end, place] of Object.entries(tables.places)) {
      const [cable = "", conductor, side] = end.split(".");
      const circuit = Number(cable.slice(1)) / perCircuit;
      if (conductor !== "bk" || circuit % 2 === 0 || place.at.kind !== "terminal") continue;
      const { device } = place.at;
      const before = tables.devices[device] as Device;
      tables.devices[device] = { ...before, type: "breaker-gfci-1", function: "gfci" };
      tables.places[`${cable}.wh.${side}`] = { at: onTerminal(device, "LOAD_N") };
    }
  });
}
