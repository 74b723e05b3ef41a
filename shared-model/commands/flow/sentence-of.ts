import { catalogue, type Part } from "../../lib/catalogue.ts";
import type { Problem } from "../../lib/result.ts";
import type { DeviceId, EnclosureId, EndKey, OutletKey, SpliceId } from "../../model/ids.ts";
import { parseOutlet } from "../../model/ids.ts";
import type { Installation } from "../../model/project.ts";
import { findEndFacts, nameOfEnd } from "../../queries/end-facts.ts";
import { findDevice, findJumper, findSplice } from "../../queries/find-item.ts";
import { unnamed } from "../item-words.ts";

const wording = catalogue({
  cableBox: (cable: Part, box: Part) => `In proposed, ${cable} would end in ${box}, which is not there.`,
  cableEntry: (cable: Part, box: Part) => `In proposed, ${cable} would enter ${box} by an entry that is not there.`,
  decided: (device: Part) => `In proposed, what was decided for ${device} would be about an outlet that is not there.`,
  directory: (device: Part) => `In proposed, the directory would have a line for ${device}, which is not there.`,
  endIn: (end: Part, box: Part, place: Part) =>
    `In proposed, ${end} in ${box} would be in a place that ${place} does not have.`,
  endOn: (end: Part, box: Part, place: Part) =>
    `In proposed, ${end} in ${box} would be on ${place}, which is not there.`,
  endOwn: (end: Part, box: Part) =>
    `Proposed says something of its own about ${end} in ${box}, which would no longer end there.`,
  intentCable: (box: Part) => `Proposed says what ${box} is meant to do with a cable that would not be there.`,
  intentGone: (box: Part) => `Proposed would say what ${box} is meant to do, and ${box} is not there.`,
  jumper: (jumper: Part) => `In proposed, jumper ${jumper} would have both ends at one place.`,
  jumperOf: (box: Part) => `In proposed, jumper of ${box} would have both ends at one place.`,
  label: "In proposed, a label would be on something that is not there.",
  load: (load: Part, device: Part) => `In proposed, ${load} would be plugged into ${device}, which is not there.`,
  noPlace: (box: Part) => `In proposed, a conductor that ends in ${box} would have no place there.`,
  passEntry: (box: Part) => `In proposed, a cable would run through ${box} by an entry that is not there.`,
  passGone: (box: Part) => `In proposed, a cable runs through ${box} that would not be there.`,
  room: (box: Part) => `In proposed, ${box} would stand in a room that is not there.`,
  something: "something",
  splice: (splice: Part) => `splice ${splice}`.trimEnd(),
  twice: (thing: Part) => `In proposed, ${thing} would be in two places.`,
});

/**
 * What a problem of proposed means to a person: things by their names, which are looked for in `states`, the first first,
 * because what is missing in one is there in another.
 */
export function sentenceOf({ code, path, message }: Problem, states: readonly Installation[]): string {
  const [, , table, id = "", part, key = "", last] = path.split("/");
  if (table === "enclosures") return inEnclosure(code, states, id as EnclosureId, part, key) ?? message;
  if (table === "cables") return ofCable(code, states, id, key as "a" | "b") ?? message;
  if (table === "loads") return ofLoad(code, states, id) ?? message;
  if (table === "labels") return code === "unknown-item" ? wording.label : message;
  if (table === "directory") return wording.directory(deviceIn(states, id));
  if (table === "intent" && id === "outlets" && code === "unknown-outlet") {
    const outlet = [part, key, last].filter((one) => one !== undefined && one !== "").join("/") as OutletKey;
    return wording.decided(deviceIn(states, parseOutlet(outlet).device));
  }
  if (table === "intent" && id === "boxes" && part !== undefined) {
    const box = enclosureIn(states, part);
    if (code === "unknown-enclosure") return wording.intentGone(box);
    return wording.intentCable(box);
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
        return wording.endOn(end, box, placeIn(states, id, key as EndKey));
      case "unknown-terminal":
      case "unknown-hole":
        return wording.endIn(end, box, placeIn(states, id, key as EndKey));
      case "place-without-end":
        return wording.endOwn(end, box);
    }
  }
  if (code === "end-without-place") return wording.noPlace(box);
  if (code === "jumper-to-itself") {
    const jumper = first(states, (one) => findJumper(one, key as Parameters<typeof findJumper>[1])?.jumper.name);
    return jumper === undefined ? wording.jumperOf(box) : wording.jumper(jumper);
  }
  if (code === "duplicate-id") {
    const name =
      first(states, (one) => findDevice(one, key as DeviceId)?.device.name) ??
      first(states, (one) => findSplice(one, key as SpliceId)?.splice.name);
    return wording.twice(name ?? wording.something);
  }
  if (code === "unknown-conductor") return wording.passGone(box);
  if (code === "unknown-entry") return wording.passEntry(box);
  if (code === "unknown-room") return wording.room(box);
  return undefined;
}

function ofCable(code: string, states: readonly Installation[], id: string, side: "a" | "b"): string | undefined {
  const cable = first(states, ({ cables }) => cables[id as keyof typeof cables]);
  const where = cable?.sides[side];
  if (cable === undefined || where === undefined || !("enclosure" in where)) return undefined;
  const box = enclosureIn(states, where.enclosure);
  if (code === "unknown-enclosure") return wording.cableBox(cable.name, box);
  if (code === "unknown-entry") return wording.cableEntry(cable.name, box);
  return undefined;
}

function ofLoad(code: string, states: readonly Installation[], id: string): string | undefined {
  const load = first(states, ({ loads }) => loads[id as keyof typeof loads]);
  if (code !== "unknown-outlet" || load === undefined) return undefined;
  return wording.load(load.name, deviceIn(states, parseOutlet(load.plug).device));
}

function first<T>(states: readonly Installation[], find: (state: Installation) => T | undefined): T | undefined {
  for (const state of states) {
    const found = find(state);
    if (found !== undefined) return found;
  }
  return undefined;
}

const enclosureIn = (states: readonly Installation[], id: string): string =>
  first(states, ({ enclosures }) => enclosures[id as EnclosureId]?.name) ?? unnamed.box;

const deviceIn = (states: readonly Installation[], id: string): string =>
  first(states, (one) => findDevice(one, id as DeviceId)?.device.name) ?? unnamed.device;

function endIn(states: readonly Installation[], id: EnclosureId, end: EndKey): string {
  const name = first(states, (one) => {
    const enclosure = one.enclosures[id];
    if (enclosure === undefined || findEndFacts(one, enclosure, end) === undefined) return undefined;
    return nameOfEnd(one, enclosure, end);
  });
  return name ?? unnamed.conductor;
}

/** The device or splice that an end is on in the first of the states. */
function placeIn(states: readonly Installation[], id: EnclosureId, end: EndKey): string {
  const at = states[0]?.enclosures[id]?.places[end]?.at;
  if (at?.kind === "terminal") return deviceIn(states, at.device);
  if (at?.kind !== "splice") return wording.something;
  return wording.splice(first(states, (one) => findSplice(one, at.splice)?.splice.name) ?? "");
}
