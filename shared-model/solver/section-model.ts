import type { Role } from "../answers/circuit.ts";
import type { DeviceNode } from "../catalog/device-type.ts";
import { getDeviceType } from "../catalog/device-types.ts";
import type { Device } from "../model/device.ts";
import type { Enclosure } from "../model/enclosure.ts";
import type { DeviceId, OutletKey } from "../model/ids.ts";
import type { Installation } from "../model/project.ts";
import { inOrder } from "../queries/in-order.ts";
import { outletsOf, type PlacedOutlet } from "../queries/outlets-of.ts";
import { circuitOn, hotSideOf } from "./circuits.ts";
import { type ConductionGraph, conductionGraph, GROUND, HOT, NEUTRAL } from "./conduction-graph.ts";
import { areJoinable } from "./joinable.ts";
import { deadHotsOnGround, hotsAround, hotsOnGround, neutralsAround, neutralsOnGround, shorts } from "./joinings.ts";
import { type OutletNodes, type Sensor, sensingClass, sensorNodes } from "./protection.ts";
import { Roles } from "./roles.ts";
import type {
  Circuit,
  Joining,
  OutletStanding,
  PathStep,
  Reach,
  Spot,
  SwitchInNeutral,
  WrongPlace,
} from "./section.ts";
import type { Walked } from "./section-walk.ts";
import { type Opened, SourceReach } from "./source-reach.ts";
import { switchesInNeutral } from "./switches-in-neutral.ts";
import { wayFrom } from "./ways.ts";
import { whereHotStops, whereNeutralStops, wherePolarityCrosses } from "./wrong-places.ts";

type Placed = { readonly device: Device; readonly enclosure: Enclosure };
type PlacedBreaker = { readonly device: Device; readonly panel: Enclosure };

const byDevice = (p: { readonly device: Device }, q: { readonly device: Device }): number =>
  p.device.id < q.device.id ? -1 : 1;

/** All that is derived of one section, from its boxes, cables and panels alone; each answer is made once, when asked for. */
export class SectionModel {
  readonly walked: Walked;
  readonly graph: ConductionGraph;
  private readonly reaches = new Map<string, SourceReach>();
  private readonly circuits = new Map<DeviceId, Circuit>();
  private readonly ways = new Map<string, readonly PathStep[] | undefined>();
  private rolesMade?: Roles;
  private standings?: readonly OutletStanding[];
  private placedOutlets?: readonly { outlet: PlacedOutlet; enclosure: Enclosure; nodes: OutletNodes }[];
  private sensing?: readonly Placed[];
  private shortsFound?: readonly Joining[];
  private onGroundFound?: readonly Joining[];
  private hotsOnGroundFound?: readonly Joining[];
  private deadHotsFound?: readonly Joining[];
  private inNeutralFound?: readonly SwitchInNeutral[];
  private feeding?: ReadonlyMap<DeviceId, PlacedBreaker & { readonly hotSide: ReadonlySet<number> }>;

  constructor(installation: Installation, walked: Walked) {
    this.walked = walked;
    this.graph = conductionGraph(installation, walked);
  }

  sourceReach(opened?: Opened): SourceReach {
    const key = opened === undefined ? "" : `${opened.what} ${opened.device}`;
    let reach = this.reaches.get(key);
    if (reach === undefined) {
      reach = new SourceReach(this.graph, opened);
      this.reaches.set(key, reach);
    }
    return reach;
  }

  get roles(): Roles {
    this.rolesMade ??= new Roles(this.graph, this.sourceReach());
    return this.rolesMade;
  }

  roleOf(spot: Spot): Role {
    return this.roles.of(this.nodeOf(spot));
  }

  /** Throws on a spot that is not in the section: a bug of the caller. */
  nodeOf(spot: Spot): number {
    const { graph } = this;
    const node =
      "end" in spot
        ? graph.ends.get(spot.end)
        : "splice" in spot
          ? graph.nodeOfSplice(spot.splice)
          : "bond" in spot
            ? graph.nodeOfBond(spot.bond)
            : graph.nodeOfDevice(spot.device, spot.node);
    if (node === undefined) throw new Error(`This section has no ${JSON.stringify(spot)}.`);
    return node;
  }

  reach(opened?: Opened): Reach {
    const reach = this.sourceReach(opened);
    const some = (spot: Spot): number => reach.some(this.nodeOf(spot));
    return {
      isLive: (spot) => (some(spot) & HOT) !== 0,
      isAlwaysLive: (spot) => reach.isAlwaysHot(this.nodeOf(spot)),
      isGrounded: (spot) => (some(spot) & NEUTRAL) !== 0,
      isAlwaysGrounded: (spot) => (reach.always(this.nodeOf(spot)) & NEUTRAL) !== 0,
      isOnGround: (spot) => (some(spot) & GROUND) !== 0,
      areJoined: (one, other) => areJoinable(this.graph, reach, this.nodeOf(one), this.nodeOf(other), opened),
    };
  }

  outlets(): readonly OutletStanding[] {
    this.standings ??= this.standingOutlets();
    return this.standings;
  }

  sensingDevices(): readonly Placed[] {
    this.sensing ??= [...this.graph.devices.values()]
      .filter(({ device }) => {
        const { sensing } = getDeviceType(device.type);
        return sensing !== undefined && sensingClass(device, sensing) !== "none";
      })
      .sort(byDevice);
    return this.sensing;
  }

  breakers(): readonly PlacedBreaker[] {
    return [...this.feedingBreakers().values()].sort(byDevice);
  }

  circuitOf(id: DeviceId): Circuit {
    let circuit = this.circuits.get(id);
    if (circuit === undefined) {
      const breaker = this.feedingBreakers().get(id);
      if (breaker === undefined) throw new Error(`No breaker ${id} feeds this section.`);
      const lines = this.sensingDevices()
        .filter(({ enclosure }) => enclosure.kind === "box")
        .map(({ device }) => this.lineOf(device));
      circuit = circuitOn({
        graph: this.graph,
        breaker: breaker.device,
        panel: breaker.panel.id,
        hotSide: breaker.hotSide,
        outlets: this.placed(),
        lines,
      });
      this.circuits.set(id, circuit);
    }
    return circuit;
  }

  wayFrom(source: "ungrounded" | "grounded", to: Spot, open?: DeviceId): readonly PathStep[] | undefined {
    const node = this.nodeOf(to);
    const key = `${source} ${node} ${open ?? ""}`;
    if (!this.ways.has(key)) {
      const opened: Opened | undefined = open === undefined ? undefined : { device: open, what: "sensor" };
      this.ways.set(key, wayFrom(this.graph, this.sourceReach(opened), source, node, opened));
    }
    return this.ways.get(key);
  }

  whereNeutralStops(key: OutletKey): WrongPlace | undefined {
    return whereNeutralStops(this.graph, this.sourceReach(), this.nodesOfOutlet(key));
  }

  whereHotStops(key: OutletKey): WrongPlace | undefined {
    return whereHotStops(this.graph, this.sourceReach(), this.nodesOfOutlet(key));
  }

  shorts(): readonly Joining[] {
    this.shortsFound ??= shorts(this.graph, this.sourceReach());
    return this.shortsFound;
  }

  neutralsOnGround(): readonly Joining[] {
    this.onGroundFound ??= neutralsOnGround(this.graph, this.sourceReach());
    return this.onGroundFound;
  }

  hotsOnGround(): readonly Joining[] {
    this.hotsOnGroundFound ??= hotsOnGround(this.graph, this.sourceReach());
    return this.hotsOnGroundFound;
  }

  deadHotsOnGround(): readonly Joining[] {
    this.deadHotsFound ??= deadHotsOnGround(this.graph, this.sourceReach());
    return this.deadHotsFound;
  }

  neutralsAround(id: DeviceId): readonly Joining[] {
    const device = this.sensingDevices().find((one) => one.device.id === id)?.device;
    const sensing = device === undefined ? undefined : getDeviceType(device.type).sensing;
    if (sensing?.line.neutral === undefined || sensing.load.neutral === undefined) return [];
    const opened: Opened = { device: id, what: "contacts" };
    const outlets = this.placed().map(({ nodes }) => nodes);
    const own = {
      lineNeutral: this.nodeOf({ device: id, node: sensing.line.neutral }),
      loadNeutral: this.nodeOf({ device: id, node: sensing.load.neutral }),
    };
    return neutralsAround(this.graph, this.sourceReach(), this.sourceReach(opened), opened, own, outlets);
  }

  hotsAround(id: DeviceId, nearest: "LINE" | "LOAD"): readonly Joining[] {
    const device = this.sensingDevices().find((one) => one.device.id === id)?.device;
    const { line, load } = (device === undefined ? undefined : getDeviceType(device.type).sensing) ?? {};
    const [lineHot, loadHot] = [line?.hot[0], load?.hot[0]];
    // What leads round a breaker comes from another one, or from the bus: that is another fault.
    if (lineHot === undefined || loadHot === undefined || lineHot.startsWith("@")) return [];
    const opened: Opened = { device: id, what: "contacts" };
    const own = {
      lineHot: this.nodeOf({ device: id, node: lineHot }),
      loadHot: this.nodeOf({ device: id, node: loadHot }),
    };
    const outlets = this.placed().map(({ nodes }) => nodes);
    return hotsAround(this.graph, this.sourceReach(), this.sourceReach(opened), opened, own, outlets, nearest);
  }

  switchesInNeutral(): readonly SwitchInNeutral[] {
    this.inNeutralFound ??= switchesInNeutral(
      this.graph,
      this.sourceReach(),
      this.placed().map(({ outlet: { key }, nodes }) => ({ key, nodes })),
    );
    return this.inNeutralFound;
  }

  wherePolarityCrosses(key: OutletKey): WrongPlace | undefined {
    return wherePolarityCrosses(this.graph, this.sourceReach(), this.nodesOfOutlet(key));
  }

  private nodesOfOutlet(key: OutletKey): OutletNodes {
    const found = this.placed().find(({ outlet }) => outlet.key === key);
    if (found === undefined) throw new Error(`This section has no outlet ${key}.`);
    return found.nodes;
  }

  /** Outlets of its boxes with the nodes that they hang on. */
  placed(): readonly { outlet: PlacedOutlet; enclosure: Enclosure; nodes: OutletNodes }[] {
    this.placedOutlets ??= this.walked.boxes.flatMap((enclosure) =>
      inOrder(enclosure.devices)
        .flatMap(outletsOf)
        .map((outlet) => {
          const at = (node: DeviceNode): number => this.nodeOf({ device: outlet.device.id, node });
          return { outlet, enclosure, nodes: { hot: at(outlet.hot), neutral: at(outlet.neutral) } };
        }),
    );
    return this.placedOutlets;
  }

  private standingOutlets(): readonly OutletStanding[] {
    const base = this.sourceReach();
    const { roles } = this;
    return this.placed().map(({ outlet, enclosure, nodes }) => ({
      outlet,
      enclosure,
      hot: roles.of(nodes.hot),
      neutral: roles.of(nodes.neutral),
      live: (base.some(nodes.hot) & HOT) !== 0,
    }));
  }

  sensorOf(device: Device): Sensor {
    const { sensing } = getDeviceType(device.type);
    if (sensing === undefined) throw new Error(`${device.id} senses nothing.`);
    return {
      device,
      ...sensorNodes(this.graph, device, sensing),
      isPersonnel: sensingClass(device, sensing) === "personnel",
      cut: this.sourceReach({ device: device.id, what: "sensor" }),
    };
  }

  private lineOf(device: Device): OutletNodes {
    const { sensing } = getDeviceType(device.type);
    const nodes = sensing === undefined ? undefined : sensorNodes(this.graph, device, sensing);
    return { hot: nodes?.lineHot[0] ?? -1, neutral: nodes?.lineNeutral ?? -1 };
  }

  private feedingBreakers(): ReadonlyMap<DeviceId, PlacedBreaker & { readonly hotSide: ReadonlySet<number> }> {
    if (this.feeding !== undefined) return this.feeding;
    const own = new Set(this.walked.boxes);
    const found = new Map<DeviceId, PlacedBreaker & { readonly hotSide: ReadonlySet<number> }>();
    for (const [id, { device, enclosure }] of this.graph.devices) {
      const { family } = getDeviceType(device.type);
      if (family !== "breaker" && family !== "fuse") continue;
      const hotSide = hotSideOf(this.graph, device);
      const reaches = [...hotSide].some((node) => own.has(this.graph.nodes[node]?.enclosure as Enclosure));
      if (reaches) found.set(id, { device, panel: enclosure, hotSide });
    }
    this.feeding = found;
    return found;
  }
}
