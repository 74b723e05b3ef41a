import type { Problem } from "../../lib/result.ts";
import type { DeviceId, EnclosureId, EndKey, OutletKey, SpliceId } from "../../model/ids.ts";
import { parseOutlet } from "../../model/ids.ts";
import type { Installation } from "../../model/project.ts";
import { findEndFacts, nameOfEnd } from "../../queries/end-facts.ts";
import { findDevice, findJumper, findSplice } from "../../queries/find-item.ts";

/**
 * What a problem of proposed means to a person: things by their names, which are looked for in `states`, the first first,
 * because what is missing in one is there in another.
 */
export function sentenceOf({ code, path, message }: Problem, states: readonly Installation[]): string {
  const [, , table, id = "", part, key = "", last] = path.split("/");
  if (table === "enclosures") return inEnclosure(code, states, id as EnclosureId, part, key) ?? message;
  if (table === "cables") return ofCable(code, states, id, key as "a" | "b") ?? message;
  if (table === "loads") return ofLoad(code, states, id) ?? message;
  if (table === "labels")
    return code === "unknown-item" ? "In proposed, a label would be on something that is not there." : message;
  if (table === "directory")
    return `In proposed, the directory would have a line for ${deviceIn(states, id)}, which is not there.`;
  if (table === "intent" && id === "outlets" && code === "unknown-outlet") {
    const outlet = [part, key, last].filter((one) => one !== undefined && one !== "").join("/") as OutletKey;
    return `In proposed, what was decided for ${deviceIn(states, parseOutlet(outlet).device)} would be about an outlet that is not there.`;
  }
  if (table === "intent" && id === "boxes" && part !== undefined) {
    const box = enclosureIn(states, part);
    if (code === "unknown-enclosure") return `Proposed would say what ${box} is meant to do, and ${box} is not there.`;
    return `Proposed says what ${box} is meant to do with a cable that would not be there.`;
  }
  return message;
}

function inEnclosure(
  code: string,
  states: readonly Installation[],
  id: EnclosureId,
  part: string | undefined,
  key: string,
): string | undefined {
  const box = enclosureIn(states, id);
  if (part === "places") {
    const end = endIn(states, id, key as EndKey);
    switch (code) {
      case "unknown-splice":
      case "unknown-device":
        return `In proposed, ${end} in ${box} would be on ${placeIn(states, id, key as EndKey)}, which is not there.`;
      case "unknown-terminal":
      case "unknown-hole":
        return `In proposed, ${end} in ${box} would be in a place that ${placeIn(states, id, key as EndKey)} does not have.`;
      case "place-without-end":
        return `Proposed says something of its own about ${end} in ${box}, which would no longer end there.`;
    }
  }
  if (code === "end-without-place") return `In proposed, a conductor that ends in ${box} would have no place there.`;
  if (code === "jumper-to-itself") {
    const jumper = first(states, (one) => findJumper(one, key as Parameters<typeof findJumper>[1])?.jumper.name);
    return `In proposed, jumper ${jumper ?? `of ${box}`} would have both ends at one place.`;
  }
  if (code === "duplicate-id") {
    const name =
      first(states, (one) => findDevice(one, key as DeviceId)?.device.name) ??
      first(states, (one) => findSplice(one, key as SpliceId)?.splice.name);
    return `In proposed, ${name ?? "something"} would be in two places.`;
  }
  if (code === "unknown-conductor") return `In proposed, a cable runs through ${box} that would not be there.`;
  if (code === "unknown-entry") return `In proposed, a cable would run through ${box} by an entry that is not there.`;
  if (code === "unknown-room") return `In proposed, ${box} would stand in a room that is not there.`;
  return undefined;
}

function ofCable(code: string, states: readonly Installation[], id: string, side: "a" | "b"): string | undefined {
  const cable = first(states, ({ cables }) => cables[id as keyof typeof cables]);
  const where = cable?.sides[side];
  if (cable === undefined || where === undefined || !("enclosure" in where)) return undefined;
  const box = enclosureIn(states, where.enclosure);
  if (code === "unknown-enclosure") return `In proposed, ${cable.name} would end in ${box}, which is not there.`;
  if (code === "unknown-entry") return `In proposed, ${cable.name} would enter ${box} by an entry that is not there.`;
  return undefined;
}

function ofLoad(code: string, states: readonly Installation[], id: string): string | undefined {
  const load = first(states, ({ loads }) => loads[id as keyof typeof loads]);
  if (code !== "unknown-outlet" || load === undefined) return undefined;
  return `In proposed, ${load.name} would be plugged into ${deviceIn(states, parseOutlet(load.plug).device)}, which is not there.`;
}

function first<T>(states: readonly Installation[], find: (state: Installation) => T | undefined): T | undefined {
  for (const state of states) {
    const found = find(state);
    if (found !== undefined) return found;
  }
  return undefined;
}

const enclosureIn = (states: readonly Installation[], id: string): string =>
  first(states, ({ enclosures }) => enclosures[id as EnclosureId]?.name) ?? "a box";

const deviceIn = (states: readonly Installation[], id: string): string =>
  first(states, (one) => findDevice(one, id as DeviceId)?.device.name) ?? "a device";

function endIn(states: readonly Installation[], id: EnclosureId, end: EndKey): string {
  const name = first(states, (one) => {
    const enclosure = one.enclosures[id];
    if (enclosure === undefined || findEndFacts(one, enclosure, end) === undefined) return undefined;
    return nameOfEnd(one, enclosure, end);
  });
  return name ?? "a conductor";
}

/** The device or splice that an end is on in the first of the states. */
function placeIn(states: readonly Installation[], id: EnclosureId, end: EndKey): string {
  const at = states[0]?.enclosures[id]?.places[end]?.at;
  if (at?.kind === "terminal") return deviceIn(states, at.device);
  if (at?.kind !== "splice") return "something";
  return `splice ${first(states, (one) => findSplice(one, at.splice)?.splice.name) ?? ""}`.trimEnd();
}
