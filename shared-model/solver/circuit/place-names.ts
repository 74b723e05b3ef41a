import { catalogue, type Part } from "../../lib/catalogue.ts";
import { type EnclosureId, type EndKey, parseEnd } from "../../model/ids.ts";
import type { Installation } from "../../model/project.ts";
import type { Probe } from "./circuit.ts";

const wording = catalogue({
  earth: "earth",
  busA: "bus A",
  busB: "bus B",
  busC: "bus C",
  neutralBar: "neutral bar",
  groundBar: "ground bar",
  jumperEnd: (jumper: Part, side: Part, home: Part) => `${jumper}.${side} at ${home}`,
  cableEnd: (cable: Part, conductor: Part, home: Part) => `${cable}.${conductor} at ${home}`,
  metalOf: (enclosure: Part) => `metal of ${enclosure}`,
});

const PANEL_NODES: Readonly<Record<string, string>> = {
  "@busA": wording.busA,
  "@busB": wording.busB,
  "@busC": wording.busC,
  "@neutral": wording.neutralBar,
  "@ground": wording.groundBar,
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
      return wording.jumperEnd(nameOf(parsed.jumper), parsed.side, nameOf(homes.get(parsed.jumper) ?? ""));
    const cable = installation.cables[parsed.cable];
    const where = cable?.sides[parsed.side];
    const home = where !== undefined && "enclosure" in where ? nameOf(where.enclosure) : "";
    return wording.cableEnd(cable?.name ?? parsed.cable, parsed.conductor, home);
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
        return onOneLine(wording.metalOf(nameOf(place.enclosure)));
      case "end":
        return onOneLine(nameOfEnd(place.end));
      case "earth":
        return wording.earth;
    }
  };
}

/** A name is whatever a person typed; a line of a netlist or table must stay one. */
const onOneLine = (text: string): string => text.replace(/[\p{Cc}\u2028\u2029]/gu, " ");
