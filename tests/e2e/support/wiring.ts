/** What is wired to what in a drawing, told by names alone: two drawings that agree in it are the same wiring. */
import type { Enclosure } from "../../../shared-model/model/enclosure.ts";
import { type EndKey, jumperEnd, parseEnd } from "../../../shared-model/model/ids.ts";
import type { Project } from "../../../shared-model/model/project.ts";
import { membersOf } from "../../../shared-model/queries/landings.ts";

/**
 * Sorted lines: enclosures, devices with their types, cables with both boxes, and where every conductor end and both ends
 * of every jumper are. A splice is told by the cable ends in it, so that neither ids nor names of splices and jumpers enter.
 * @param called Other names of devices, by the name they have in this drawing.
 */
export function wiringOf({ asFound }: Project, called: Readonly<Record<string, string>> = {}): readonly string[] {
  const lines: string[] = [];
  const nameOf = (name: string): string => called[name] ?? name;
  const cableEnd = (end: EndKey): string => {
    const parsed = parseEnd(end);
    return parsed?.of === "cable" ? `${asFound.cables[parsed.cable]?.name}.${parsed.conductor}` : "";
  };
  const placeOf = (box: Enclosure, end: EndKey): string => {
    const at = box.places[end]?.at;
    switch (at?.kind) {
      case "terminal":
        return `${nameOf(box.devices[at.device]?.name ?? "")}.${at.terminal} hole ${at.hole}`;
      case "splice": {
        const joined = membersOf(box, at.splice).map(cableEnd).filter(Boolean).sort();
        return `${box.splices[at.splice]?.connector} {${joined.join(" ")}}`;
      }
      default:
        return at?.kind ?? "nowhere";
    }
  };
  for (const box of Object.values(asFound.enclosures)) {
    lines.push(`${box.name}: ${box.item}, ${Object.keys(box.splices).length} splices`);
    for (const { name, type } of Object.values(box.devices)) lines.push(`${box.name}: ${nameOf(name)} ${type}`);
    for (const end of Object.keys(box.places) as EndKey[]) {
      const name = cableEnd(end);
      if (name !== "") lines.push(`${box.name}: ${name} at ${placeOf(box, end)}`);
    }
    for (const { id, awg, colour } of Object.values(box.jumpers)) {
      const ends = [placeOf(box, jumperEnd(id, "a")), placeOf(box, jumperEnd(id, "b"))].sort();
      lines.push(`${box.name}: jumper ${awg} ${colour} ${ends.join(" to ")}`);
    }
  }
  for (const { name, item, sides } of Object.values(asFound.cables)) {
    const ends = [sides.a, sides.b].map((side) =>
      "outside" in side ? "outside" : (asFound.enclosures[side.enclosure]?.name ?? ""),
    );
    lines.push(`${name} ${item}: ${ends.sort().join(" to ")}`);
  }
  for (const { name, plug } of Object.values(asFound.loads)) {
    const [device = ""] = plug.split("/");
    const found = Object.values(asFound.enclosures).flatMap((box) => Object.values(box.devices));
    lines.push(`${name} plugged into ${nameOf(found.find(({ id }) => id === device)?.name ?? "")}`);
  }
  return lines.sort();
}
