import { cableEnd, jumperEnd, parseEnd, parseOutlet, type Side } from "../../../shared-model/model/ids.ts";
import type { Installation } from "../../../shared-model/model/project.ts";
import { cablesInto } from "../../../shared-model/queries/cables-into.ts";
import { findDevice, findJumper, findSplice } from "../../../shared-model/queries/find-item.ts";
import type { Selected } from "../../state/selection.ts";
import { ROOMS } from "./outline-tree.ts";

/**
 * Key of the place in the outline where a thing stands; its ancestors' keys are the beginnings of it.
 * @param near Key of the row the person is at: a cable is shown in that box where it enters it.
 */
export function keyInOutline(installation: Installation, item: Selected, near: string | undefined): string | undefined {
  switch (item.kind) {
    case "enclosure":
      return item.id in installation.enclosures ? item.id : undefined;
    case "room":
      return `${ROOMS}/${item.id}`;
    case "device":
      return inside(findDevice(installation, item.id)?.enclosure.id, item.id);
    case "splice":
      return inside(findSplice(installation, item.id)?.enclosure.id, item.id);
    case "jumper":
      return inside(findJumper(installation, item.id)?.enclosure.id, item.id);
    case "cable":
      return keyOfCable(installation, item.id, near);
    case "end": {
      const parsed = parseEnd(item.id);
      if (parsed === undefined) return undefined;
      if (parsed.of === "jumper") return `${item.enclosure}/${parsed.jumper}/${jumperEnd(parsed.jumper, parsed.side)}`;
      const { cable, conductor, side } = parsed;
      return `${item.enclosure}/${cable}.${side}/${cableEnd(cable, conductor, side)}`;
    }
    case "entry": {
      const into = cablesInto(installation.cables, item.enclosure).find(({ entry }) => entry === item.id);
      return into === undefined
        ? `${item.enclosure}/${item.id}`
        : `${item.enclosure}/${into.cable.id}.${into.side}/${item.id}`;
    }
    case "load": {
      const plug = installation.loads[item.id]?.plug;
      const device = plug && parseOutlet(plug).device;
      const home = device && findDevice(installation, device)?.enclosure.id;
      return home && `${home}/${device}/${item.id}`;
    }
    case "label": {
      const on = installation.labels[item.id]?.on;
      if (on === undefined) return undefined;
      if ("enclosure" in on) return `${on.enclosure}/${item.id}`;
      if ("device" in on) return inside(findDevice(installation, on.device)?.enclosure.id, `${on.device}/${item.id}`);
      return inside(keyOfCable(installation, on.cable, near), item.id);
    }
  }
}

function keyOfCable(
  installation: Installation,
  id: Extract<Selected, { kind: "cable" }>["id"],
  near: string | undefined,
): string | undefined {
  const sides = installation.cables[id]?.sides;
  if (sides === undefined) return undefined;
  const keys = (["a", "b"] as readonly Side[]).flatMap((side) => {
    const where = sides[side];
    return "enclosure" in where ? [`${where.enclosure}/${id}.${side}`] : [];
  });
  const home = near?.split("/")[0];
  return keys.find((key) => key.split("/")[0] === home) ?? keys[0];
}

const inside = (home: string | undefined, id: string): string | undefined => home && `${home}/${id}`;

/** Keys of everything that a place in the outline stands in, outermost first. */
export function ancestorsOf(key: string): readonly string[] {
  const parts = key.split("/");
  return parts.slice(0, -1).map((_, at) => parts.slice(0, at + 1).join("/"));
}
