import type {
  CommandArgs,
  CommandId,
  PropertyTarget,
  PropertyValue,
} from "../../shared-model/commands/command-args.ts";
import { runCommand } from "../../shared-model/commands/run-command.ts";
import type { Device } from "../../shared-model/model/device.ts";
import type { Enclosure, EntryMeans, VolumeFact } from "../../shared-model/model/enclosure.ts";
import type { EvidenceMark } from "../../shared-model/model/evidence.ts";
import {
  asId,
  type ConductorKey,
  cableEnd,
  type DeviceId,
  type EnclosureId,
  type EndKey,
  type EntryId,
  type Half,
  jumperEnd,
  type RingId,
  type TerminalName,
} from "../../shared-model/model/ids.ts";
import type { At } from "../../shared-model/model/place.ts";
import type { Edition, Project, StateName } from "../../shared-model/model/project.ts";
import type { RoomKind } from "../../shared-model/model/room.ts";
import { findTerminal } from "../../shared-model/queries/terminals-of.ts";
import type { Colour } from "../../shared-model/units/colour.ts";
import type { WireSize } from "../../shared-model/units/wire-size.ts";
import { boxId, cableId, deviceId, jumperId, loadId, outlet, roomId, spliceId } from "./ids.ts";

/** Where something goes: "R1.H1", "R1.LINE_H#2" (its second hole), "Q14.OUT", "splice X", "bond", "capped", "loose". */
export type Spot = string;

interface BoxOptions {
  readonly room?: string;
  readonly note?: string;
  readonly at?: { readonly x: number; readonly y: number };
  readonly set?: Readonly<Record<string, PropertyValue>>;
}

interface CableOptions {
  readonly ft?: number;
  /** Catalogue item; "nm-12-2-g" unless told. */
  readonly item?: string;
  /** What holds it at both ends; by the clamps of the box unless told. */
  readonly means?: EntryMeans;
  readonly set?: Readonly<Record<string, PropertyValue>>;
}

interface DeviceOptions {
  readonly zones?: readonly RoomKind[];
  readonly set?: Readonly<Partial<Record<keyof Device & string, PropertyValue>>>;
}

/**
 * Builds drawings for tests by real commands, one state at a time. A refused command throws with its sentence. Ids come
 * from names; entries are named after their cable: cable C1 enters by "e-C1".
 *
 * `drawing().box("B1").device("R1", "receptacle-15", "B1").outside("C1", "B1").land("C1.bk@B1", "R1.H1").project`
 */
export class Drawing {
  #project: Project;
  readonly #state: StateName;

  constructor(project: Project, state: StateName) {
    this.#project = project;
    this.#state = state;
  }

  get project(): Project {
    return this.#project;
  }

  /** Runs any command; `state` is that of the drawing. */
  run<I extends CommandId>(command: I, args: Omit<CommandArgs[I], "state">): this {
    const needsState = !STATELESS.has(command);
    const done = runCommand(this.#project, { command, args: needsState ? { ...args, state: this.#state } : args });
    if (!done.ok) throw new Error(`${command}: ${done.refusal.code}: ${done.refusal.message} ${JSON.stringify(args)}`);
    this.#project = done.project;
    return this;
  }

  room(name: string, ...kinds: readonly RoomKind[]): this {
    return this.run("add-room", { id: roomId(name), name, kinds });
  }

  /** `item` is of the enclosure catalogue; a 4 in. square box, 2-1/8 in. deep, unless told. */
  box(name: string, item = "square-4-2-1-8", options: BoxOptions = {}): this {
    const count = Object.keys(this.#project.layout.enclosures).length;
    this.run("place-enclosure", {
      id: boxId(name),
      item,
      name,
      at: options.at ?? { x: (count % 4) * 480, y: Math.floor(count / 4) * 420 },
      ...(options.room !== undefined && { roomId: roomId(options.room) }),
      ...(options.note !== undefined && { note: options.note }),
    });
    return this.#setAll({ kind: "enclosure", id: boxId(name) }, options.set);
  }

  /** A panel with its bars: devices "P neutral" and "P ground". */
  panel(name: string, item = "panel-16", options: BoxOptions = {}): this {
    this.run("place-enclosure", {
      id: boxId(name),
      item,
      name,
      at: options.at ?? { x: -480, y: 0 },
      bars: { neutral: deviceId(`${name} neutral`), ground: deviceId(`${name} ground`) },
    });
    return this.#setAll({ kind: "enclosure", id: boxId(name) }, options.set);
  }

  ring(box: string, volume: VolumeFact = { kind: "unknown" }): this {
    const id = asId<RingId>(`ring-${boxId(box)}`);
    return this.run("add-ring", { enclosure: boxId(box), id, kind: "plaster-ring", volume });
  }

  /** `type` is of the device catalogue; breakers go into a panel. */
  device(name: string, type: string, enclosure: string, options: DeviceOptions = {}): this {
    this.run("place-device", { enclosure: boxId(enclosure), id: deviceId(name), type, name });
    const { zones, set } = options;
    return this.#setAll({ kind: "device", id: deviceId(name) }, { ...(zones && { zones }), ...set });
  }

  breaker(name: string, panel: string, options: { readonly ratingA?: number; readonly type?: string } = {}): this {
    const { ratingA = 20, type = "breaker-1" } = options;
    return this.device(name, type, panel, { set: { breakerRatingA: ratingA } });
  }

  /** A cable between two enclosures; side a is the first. Its ends are capped. */
  cable(name: string, from: string, to: string, options: CableOptions = {}): this {
    return this.#route(name, this.#entry(from, name, options), this.#entry(to, name, options), options);
  }

  /** A cable whose other side is not drawn; side a is the one that is. */
  outside(name: string, enclosure: string, options: CableOptions = {}): this {
    return this.#route(name, this.#entry(enclosure, name, options), { outside: "not drawn" }, options);
  }

  /** Lands an end: "C1.bk@B1" (cable, conductor, enclosure) or "p.a" (jumper, side). */
  land(end: string, spot: Spot): this {
    const { enclosure, key } = this.end(end);
    return this.run("land-end", { enclosure, end: key, at: this.at(enclosure, spot) });
  }

  /** A splice of ends already there, "C1.bk@B1" or "p.a". */
  splice(name: string, box: string, connector: string, ...ends: readonly string[]): this {
    return this.run("splice-ends", {
      enclosure: boxId(box),
      splice: spliceId(name),
      name,
      connector,
      ends: ends.map((end) => this.end(end).key),
    });
  }

  jumper(
    name: string,
    box: string,
    from: Spot,
    to: Spot,
    made: { readonly awg?: WireSize; readonly colour?: Colour } = {},
  ): this {
    const { awg = "12", colour = "black" } = made;
    const enclosure = boxId(box);
    const ends = { from: this.at(enclosure, from), to: this.at(enclosure, to) };
    return this.run("add-jumper", { enclosure, jumper: jumperId(name), name, awg, colour, ...ends });
  }

  load(name: string, item: string, device: string, half?: Half): this {
    return this.run("place-load", { id: loadId(name), item, name, plug: outlet(device, half) });
  }

  wish(device: string): this {
    return this.run("set-outlet-wish", { outlet: outlet(device), wish: { wish: "protect" } });
  }

  set(target: PropertyTarget, field: string, value: PropertyValue, evidence?: EvidenceMark): this {
    return this.run("set-property", { target, field, value, ...(evidence !== undefined && { evidence }) });
  }

  /** A field of an end, "C1.bk@B1". */
  setEnd(end: string, field: string, value: PropertyValue): this {
    const { enclosure, key } = this.end(end);
    return this.set({ kind: "end", enclosure, id: key }, field, value);
  }

  remove(...items: CommandArgs["remove-items"]["items"]): this {
    return this.run("remove-items", { items });
  }

  edition(edition: Edition): this {
    return this.run("set-edition", { edition });
  }

  /** The same wiring started a second time as proposed; what follows edits that. */
  propose(): Drawing {
    return new Drawing(new Drawing(this.#project, "as-found").run("start-proposed", {}).project, "proposed");
  }

  /** Key and enclosure of "C1.bk@B1" or "p.a". */
  end(text: string): { readonly enclosure: EnclosureId; readonly key: EndKey } {
    const [what = "", where] = text.split("@");
    const [owner = "", part = ""] = what.split(".");
    if (where === undefined) {
      const id = jumperId(owner);
      const home = Object.values(this.#installation().enclosures).find((one) => id in one.jumpers);
      if (home === undefined || (part !== "a" && part !== "b")) throw new Error(`No jumper end ${text}.`);
      return { enclosure: home.id, key: jumperEnd(id, part) };
    }
    const cable = this.#installation().cables[cableId(owner)];
    const enclosure = boxId(where);
    const side = (["a", "b"] as const).find((one) => {
      const at = cable?.sides[one];
      return at !== undefined && "enclosure" in at && at.enclosure === enclosure;
    });
    if (side === undefined) throw new Error(`${owner} does not enter ${where}.`);
    return { enclosure, key: cableEnd(cableId(owner), asId<ConductorKey>(part), side) };
  }

  /** The place that a spot names. A bar gives its first free hole. */
  at(enclosure: EnclosureId, spot: Spot): At {
    if (spot === "bond" || spot === "capped" || spot === "loose") return { kind: spot };
    if (spot.startsWith("splice ")) return { kind: "splice", splice: spliceId(spot.slice("splice ".length)) };
    const [path = "", hole] = spot.split("#");
    const dot = path.lastIndexOf(".");
    const device = deviceId(path.slice(0, dot));
    const terminal = path.slice(dot + 1) as TerminalName;
    return { kind: "terminal", device, terminal, hole: Number(hole ?? this.#freeHole(enclosure, device, terminal)) };
  }

  #freeHole(id: EnclosureId, device: DeviceId, terminal: TerminalName): number {
    const enclosure = this.#installation().enclosures[id];
    const placed = enclosure?.devices[device];
    if (enclosure === undefined || placed === undefined || terminal !== "BAR") return 1;
    const taken = new Set(Object.values(enclosure.places).map(({ at }) => holeOf(at, device)));
    const holes = findTerminal(placed, terminal)?.holes ?? 1;
    for (let hole = 1; hole <= holes; hole++) if (!taken.has(hole)) return hole;
    throw new Error(`${placed.name} has no free hole.`);
  }

  #installation() {
    const installation = this.#state === "as-found" ? this.#project.asFound : this.#project.proposed;
    if (installation === undefined) throw new Error("No proposed state.");
    return installation;
  }

  #entry(enclosure: string, cable: string, { means }: CableOptions) {
    const box: Enclosure | undefined = this.#installation().enclosures[boxId(enclosure)];
    const clamped = box?.kind === "box" && box.internalClamps !== "none";
    return {
      enclosure: boxId(enclosure),
      newEntry: asId<EntryId>(`e-${cable}`),
      means: means ?? (clamped ? ("internal-clamp" as const) : ("external-connector" as const)),
    };
  }

  #route(name: string, a: CommandArgs["route-cable"]["a"], b: CommandArgs["route-cable"]["b"], options: CableOptions) {
    const { item = "nm-12-2-g", ft, set } = options;
    this.run("route-cable", { id: cableId(name), item, name, a, b, ...(ft !== undefined && { lengthFt: ft }) });
    return this.#setAll({ kind: "cable", id: cableId(name) }, set);
  }

  #setAll(target: PropertyTarget, values: Readonly<Record<string, PropertyValue>> = {}): this {
    for (const [field, value] of Object.entries(values)) this.set(target, field, value);
    return this;
  }
}

const STATELESS: ReadonlySet<CommandId> = new Set<CommandId>([
  "move-enclosures",
  "pin-enclosures",
  "bend-cable",
  "add-room",
  "set-edition",
  "move-splice",
  "add-reading",
  "change-reading",
  "remove-reading",
  "start-proposed",
  "reset-proposed",
  "discard-proposed",
  "settle-held-back",
  "run-together",
]);

const holeOf = (at: At, device: DeviceId): number | undefined =>
  at.kind === "terminal" && at.device === device ? at.hole : undefined;
