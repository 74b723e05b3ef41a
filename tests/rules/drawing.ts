import { findCableItem } from "../../shared-model/catalog/cable-items.ts";
import { getDeviceType } from "../../shared-model/catalog/device-types.ts";
import type { Cable, CableSide, Conductor } from "../../shared-model/model/cable.ts";
import type { Device } from "../../shared-model/model/device.ts";
import type { Box, Enclosure, Jumper, Panel, Splice } from "../../shared-model/model/enclosure.ts";
import type { EvidenceMark } from "../../shared-model/model/evidence.ts";
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
  type OutletKey,
  type RoomId,
  type SpliceId,
  type TerminalName,
} from "../../shared-model/model/ids.ts";
import type { Load } from "../../shared-model/model/load.ts";
import type { At, Place } from "../../shared-model/model/place.ts";
import {
  type Edition,
  emptyInstallation,
  emptyProject,
  type Installation,
  type Intent,
  type OutletWish,
  type Project,
} from "../../shared-model/model/project.ts";
import type { Room } from "../../shared-model/model/room.ts";
import { terminalsOf } from "../../shared-model/queries/terminals-of.ts";
import { amps } from "../../shared-model/units/quantity.ts";
import { cubicInches } from "../../shared-model/units/volume.ts";

type Mutable<T> = { -readonly [K in keyof T]: T[K] };
type Open<T extends Enclosure> = Omit<Mutable<T>, "entries" | "devices" | "splices" | "jumpers" | "places"> & {
  entries: Record<EntryId, Enclosure["entries"][EntryId]>;
  devices: Record<DeviceId, Device>;
  splices: Record<SpliceId, Splice>;
  jumpers: Record<JumperId, Jumper>;
  places: Record<EndKey, Place>;
};

/**
 * A drawing by names: every id is the name. Ends are written "C1.bk@B1" (cable, conductor, box) or "a.1", "a.2" (jumper);
 * places "R1.H1", "R1.LOAD_H#2", "X" (a splice), "bond", "cap", "loose". Ends start capped.
 */
export class Drawing {
  edition: Edition;
  readonly rooms: Record<string, Room> = {};
  readonly enclosures: Record<string, Open<Box> | Open<Panel>> = {};
  readonly cables: Record<string, Mutable<Cable>> = {};
  /** What is plugged in, and what a person wished and meant. */
  readonly loads: Record<string, Load> = {};
  wishes: Intent = emptyInstallation.intent;
  /** Left out of `project()` unless changed. */
  readonly extra: Partial<Mutable<Project>> = {};

  constructor(edition: Edition = 2020) {
    this.edition = edition;
  }

  room(name: string, kinds: Room["kinds"], more: Partial<Room> = {}): this {
    this.rooms[name] = { id: asId<RoomId>(name), name, kinds, order: Object.keys(this.rooms).length, ...more };
    return this;
  }

  box(name: string, volumeIn3: number | undefined, more: Partial<Box> = {}): this {
    const box: Open<Box> = {
      id: asId(name),
      name,
      kind: "box",
      item: "square-4-2-1-8",
      material: "metal",
      shape: "square",
      volume: volumeIn3 === undefined ? { kind: "unknown" } : { kind: "marked", volumeIn3: cubicInches(volumeIn3) },
      rings: {},
      internalClamps: "present",
      supports: [],
      gangs: 1,
      passThroughs: {},
      entries: {},
      devices: {},
      splices: {},
      jumpers: {},
      places: {},
      order: Object.keys(this.enclosures).length,
    };
    this.enclosures[name] = { ...box, ...(more as Partial<Open<Box>>) };
    return this;
  }

  /** A panel with its bars, named NB and GB of it: places "P-NB.BAR", "P-GB.BAR". */
  panel(name = "P"): this {
    this.enclosures[name] = {
      id: asId(name),
      name,
      kind: "panel",
      item: "panel-16",
      spaces: 16,
      supply: "service",
      mainBond: "here",
      passThroughs: {},
      entries: {},
      devices: {},
      splices: {},
      jumpers: {},
      places: {},
      order: Object.keys(this.enclosures).length,
    };
    return this.device(`${name}-NB`, "neutral-bar", name).device(`${name}-GB`, "ground-bar", name);
  }

  breaker(
    name: string,
    ratingA: number | undefined,
    more: Partial<Device> = {},
    type = "breaker-1",
    panel = "P",
  ): this {
    this.device(name, type, panel, { legs: ["A"], ...more });
    const { breakerRatingA: _typical, ...device } = this.deviceOf(name);
    const rated = ratingA === undefined ? device : { ...device, breakerRatingA: amps(ratingA) };
    this.at(panel).devices[asId<DeviceId>(name)] = rated;
    return this;
  }

  device(name: string, type: string, box: string, more: Partial<Device> = {}): this {
    const enclosure = this.at(box);
    const id = asId<DeviceId>(name);
    const order = Object.keys(enclosure.devices).length;
    enclosure.devices[id] = { ...getDeviceType(type).defaults, id, name, type, order, ...more };
    return this;
  }

  /** Between two boxes; a side that names no box is open country. */
  cable(name: string, item: string, a: string, b: string, more: Partial<Conductor> = {}): this {
    const stock = findCableItem(item);
    if (stock === undefined) throw new Error(`No cable ${item}.`);
    const conductors: Record<ConductorKey, Conductor> = {};
    for (const [key, conductor] of Object.entries(stock.conductors))
      conductors[key as ConductorKey] = { ...conductor, ...more };
    const id = asId<CableId>(name);
    this.cables[name] = {
      id,
      name,
      item,
      construction: stock.construction,
      conductors,
      sides: { a: this.side(name, a), b: this.side(name, b) },
      order: Object.keys(this.cables).length,
    };
    for (const [box, side] of [
      [a, "a"],
      [b, "b"],
    ] as const) {
      if (box in this.enclosures)
        for (const key of Object.keys(conductors))
          this.at(box).places[cableEnd(id, key as ConductorKey, side)] = { at: { kind: "capped" } };
    }
    return this;
  }

  /** Plugged in at an outlet: "R3", "R5/lower". */
  load(name: string, item: string, plug: string, more: Partial<Load> = {}): this {
    const order = Object.keys(this.loads).length;
    this.loads[name] = { id: asId(name), name, item, plug: plug as OutletKey, order, ...more };
    return this;
  }

  /** By outlet: "protect" or "decided-not". */
  wish(outlets: Readonly<Record<string, OutletWish["wish"]>>, by?: string): this {
    const asked = Object.entries(outlets).map(([key, wish]) => [key, { wish, ...(by !== undefined && { by }) }]);
    this.wishes = { ...this.wishes, outlets: { ...this.wishes.outlets, ...Object.fromEntries(asked) } };
    return this;
  }

  /** By cable of a box: meant to be behind the ground-fault device there, or not to be. */
  meant(box: string, protect: Readonly<Record<string, boolean>>): this {
    this.wishes = { ...this.wishes, boxes: { ...this.wishes.boxes, [box]: { protect } } };
    return this;
  }

  splice(name: string, box: string, connector: string): this {
    const enclosure = this.at(box);
    const order = Object.keys(enclosure.splices).length;
    enclosure.splices[asId<SpliceId>(name)] = { id: asId(name), name, connector, order };
    return this;
  }

  jumper(name: string, box: string, from: string, to: string, more: Partial<Jumper> = {}): this {
    const enclosure = this.at(box);
    const id = asId<JumperId>(name);
    const order = Object.keys(enclosure.jumpers).length;
    enclosure.jumpers[id] = {
      id,
      name,
      awg: "12",
      colour: "black",
      material: "copper",
      stranded: false,
      order,
      ...more,
    };
    enclosure.places[jumperEnd(id, "a")] = { at: this.placeOf(enclosure, from) };
    enclosure.places[jumperEnd(id, "b")] = { at: this.placeOf(enclosure, to) };
    return this;
  }

  removeJumper(name: string): this {
    const enclosure = this.find((one) => name in one.jumpers, name);
    const id = asId<JumperId>(name);
    delete enclosure.jumpers[id];
    delete enclosure.places[jumperEnd(id, "a")];
    delete enclosure.places[jumperEnd(id, "b")];
    return this;
  }

  /** With nothing landed on it. */
  removeDevice(name: string): this {
    delete this.find((one) => name in one.devices, name).devices[asId<DeviceId>(name)];
    return this;
  }

  /** Pairs of an end and its place. */
  put(places: Readonly<Record<string, string>>): this {
    for (const [text, place] of Object.entries(places)) {
      const [enclosure, end] = this.endOf(text);
      enclosure.places[end] = { ...enclosure.places[end], at: this.placeOf(enclosure, place) };
    }
    return this;
  }

  /** Marks how the place of an end is known. */
  knownBy(text: string, at: EvidenceMark): this {
    const [enclosure, end] = this.endOf(text);
    enclosure.places[end] = { ...(enclosure.places[end] as Place), evidence: { at } };
    return this;
  }

  swap(one: string, other: string): this {
    const [boxOne, endOne] = this.endOf(one);
    const [boxOther, endOther] = this.endOf(other);
    const kept = boxOne.places[endOne];
    boxOne.places[endOne] = boxOther.places[endOther] as Place;
    boxOther.places[endOther] = kept as Place;
    return this;
  }

  /** Exchanges everything landed on two terminals of one device. */
  exchange(device: string, one: string, other: string): this {
    const enclosure = this.find((box) => device in box.devices, device);
    for (const [end, place] of Object.entries(enclosure.places)) {
      const { at } = place;
      if (at.kind !== "terminal" || at.device !== device || (at.terminal !== one && at.terminal !== other)) continue;
      const terminal = (at.terminal === one ? other : one) as TerminalName;
      enclosure.places[end as EndKey] = { ...place, at: { ...at, terminal } };
    }
    return this;
  }

  at(name: string): Open<Box> | Open<Panel> {
    const enclosure = this.enclosures[name];
    if (enclosure === undefined) throw new Error(`No enclosure ${name}.`);
    return enclosure;
  }

  setBox(name: string, facts: Partial<Box>): this {
    this.enclosures[name] = { ...this.at(name), ...(facts as Partial<Open<Box>>) } as Open<Box>;
    return this;
  }

  /** The entry of a cable in a box. */
  setEntry(cable: string, box: string, facts: Partial<Enclosure["entries"][EntryId]>): this {
    const { entries } = this.at(box);
    const id = asId<EntryId>(`${cable}-${box}`);
    const entry = entries[id];
    if (entry === undefined) throw new Error(`${cable} does not enter ${box}.`);
    entries[id] = { ...entry, ...facts };
    return this;
  }

  setDevice(name: string, facts: Partial<Device>): this {
    const enclosure = this.find((box) => name in box.devices, name);
    enclosure.devices[asId<DeviceId>(name)] = { ...this.deviceOf(name), ...facts };
    return this;
  }

  setSplice(name: string, facts: Partial<Splice>): this {
    const enclosure = this.find((box) => name in box.splices, name);
    const id = asId<SpliceId>(name);
    enclosure.splices[id] = { ...(enclosure.splices[id] as Splice), ...facts };
    return this;
  }

  setJumper(name: string, facts: Partial<Jumper>): this {
    const enclosure = this.find((box) => name in box.jumpers, name);
    const id = asId<JumperId>(name);
    enclosure.jumpers[id] = { ...(enclosure.jumpers[id] as Jumper), ...facts };
    return this;
  }

  setConductors(cable: string, facts: Partial<Conductor>): this {
    const found = this.cables[cable];
    if (found === undefined) throw new Error(`No cable ${cable}.`);
    const conductors: Record<ConductorKey, Conductor> = {};
    for (const [key, one] of Object.entries(found.conductors)) conductors[key as ConductorKey] = { ...one, ...facts };
    found.conductors = conductors;
    return this;
  }

  deviceOf(name: string): Device {
    return this.find((box) => name in box.devices, name).devices[asId<DeviceId>(name)] as Device;
  }

  installation(): Installation {
    return structuredClone({
      ...emptyInstallation,
      enclosures: this.enclosures as Installation["enclosures"],
      cables: this.cables as Installation["cables"],
      loads: this.loads as Installation["loads"],
      intent: this.wishes,
    });
  }

  project(): Project {
    return {
      ...emptyProject("Test drawing", this.edition),
      rooms: structuredClone(this.rooms) as Project["rooms"],
      asFound: this.installation(),
      ...this.extra,
    };
  }

  private side(cable: string, box: string): CableSide {
    if (!(box in this.enclosures)) return { outside: box };
    const entry = asId<EntryId>(`${cable}-${box}`);
    const enclosure = this.at(box);
    const order = Object.keys(enclosure.entries).length;
    enclosure.entries[entry] = { id: entry, means: "external-connector", order };
    return { enclosure: asId<EnclosureId>(box), entry };
  }

  private endOf(text: string): readonly [Open<Box> | Open<Panel>, EndKey] {
    const [what = "", box] = text.split("@");
    const [owner = "", part = ""] = what.split(".");
    if (box === undefined) {
      const end = jumperEnd(asId(owner), part === "1" ? "a" : "b");
      return [this.find((one) => owner in one.jumpers, owner), end];
    }
    const sides = this.cables[owner]?.sides;
    const side = sides !== undefined && "enclosure" in sides.a && sides.a.enclosure === box ? "a" : "b";
    const end = cableEnd(asId(owner), asId(part), side);
    if (!(end in this.at(box).places)) throw new Error(`No end ${text}.`);
    return [this.at(box), end];
  }

  private placeOf(enclosure: Open<Box> | Open<Panel>, text: string): At {
    if (text === "bond" || text === "loose") return { kind: text };
    if (text === "cap") return { kind: "capped" };
    if (text in enclosure.splices) return { kind: "splice", splice: asId(text) };
    const [device = "", rest = ""] = text.split(".");
    const [terminal = "", hole] = rest.split("#");
    const found = enclosure.devices[asId<DeviceId>(device)];
    const type = found && terminalsOf(found).find(({ name }) => name === terminal);
    if (found === undefined || type === undefined) throw new Error(`${enclosure.name} has no place ${text}.`);
    return { kind: "terminal", device: found.id, terminal: type.name, hole: hole === undefined ? 1 : Number(hole) };
  }

  private find(has: (enclosure: Open<Box> | Open<Panel>) => boolean, name: string): Open<Box> | Open<Panel> {
    const enclosure = Object.values(this.enclosures).find(has);
    if (enclosure === undefined) throw new Error(`No ${name}.`);
    return enclosure;
  }
}
