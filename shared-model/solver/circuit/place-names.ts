import { type EnclosureId, type EndKey, parseEnd } from "../../model/ids.ts";
import type { Installation } from "../../model/project.ts";
import type { Probe } from "./circuit.ts";

const PANEL_NODES: Readonly<Record<string, string>> = {
  "@busA": "bus A",
  "@busB": "bus B",
  "@busC": "bus C",
  "@neutral": "neutral bar",
  "@ground": "ground bar",
};

/** Names of places, as a person reads them on one line: "R1.UH", "B1 X", "C1.bk at B1", "P bus A", "metal of B1". */
export function placeNamer(installation: Installation): (place: Probe) => string {
  const names = new Map<string, string>();
  const homes = new Map<string, EnclosureId>();
  for (const { id, name, devices, splices, jumpers } of Object.values(installation.enclosures)) {
    names.set(id, name);
    for (const device of Object.values(devices)) names.set(device.id, device.name);
    for (const splice of Object.values(splices)) names.set(splice.id, `${name} ${splice.name}`);
    for (const jumper of Object.values(jumpers)) {
      names.set(jumper.id, jumper.name);
      homes.set(jumper.id, id);
    }
  }
  const nameOf = (id: string): string => names.get(id) ?? id;
  const nameOfEnd = (end: EndKey): string => {
    const parsed = parseEnd(end);
    if (parsed === undefined) return end;
    if (parsed.of === "jumper")
      return `${nameOf(parsed.jumper)}.${parsed.side} at ${nameOf(homes.get(parsed.jumper) ?? "")}`;
    const cable = installation.cables[parsed.cable];
    const where = cable?.sides[parsed.side];
    const home = where !== undefined && "enclosure" in where ? nameOf(where.enclosure) : "";
    return `${cable?.name ?? parsed.cable}.${parsed.conductor} at ${home}`;
  };
  return (place) => {
    switch (place.kind) {
      case "device":
        return onOneLine(`${nameOf(place.device)}.${place.node}`);
      case "panel":
        return onOneLine(`${nameOf(place.panel)} ${PANEL_NODES[place.node] ?? place.node}`);
      case "splice":
        return onOneLine(nameOf(place.splice));
      case "bond":
        return onOneLine(`metal of ${nameOf(place.enclosure)}`);
      case "end":
        return onOneLine(nameOfEnd(place.end));
      case "earth":
        return "earth";
    }
  };
}

/** A name is whatever a person typed; a line of a netlist or table must stay one. */
const onOneLine = (text: string): string => text.replace(/[\p{Cc}\u2028\u2029]/gu, " ");
