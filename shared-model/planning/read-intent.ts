import type { MakeUpIntent, Replacing, SupplyUse } from "../answers/make-up-intent.ts";
import { connectors } from "../catalog/connectors.ts";
import { findDeviceType } from "../catalog/device-types.ts";
import type { Result } from "../lib/result.ts";
import type { Box } from "../model/enclosure.ts";
import { type CableId, type ConductorKey, type DeviceId, type Half, outletKey } from "../model/ids.ts";
import type { Installation } from "../model/project.ts";
import { cablesInto } from "../queries/cables-into.ts";
import { JsonReader, shown } from "../solver/circuit/json-reader.ts";
import { READ_INTENT_WORDS as wording } from "./intent-words.ts";
import { USUAL_STYLE } from "./joint-group.ts";

const FIELDS = [
  "supply",
  "downstream",
  "switched",
  "loops",
  "travellers",
  "devices",
  "replace",
  "connectors",
  "noPushIn",
  "direct",
  "bothHoles",
] as const;
const SUPPLIES = ["feed", "two-hots", "switch-loop", "travellers"] as const;

interface Named {
  readonly id: string;
  readonly name: string;
}

/**
 * Reads what a box is to do from parsed JSON. Cables and devices go by id or by a name that only one of the box has,
 * conductors by key or colour. Every problem is told with its place.
 */
export function readIntent(input: unknown, installation: Installation, box: Box): Result<MakeUpIntent> {
  const reader = new IntentReader(installation, box);
  const value = reader.read(input);
  return value !== undefined && reader.problems.length === 0
    ? { ok: true, value }
    : { ok: false, problems: reader.problems };
}

/** A device, or one half of it as outlets are named: "R5/upper". */
function halfOf(text: unknown): readonly [name: unknown, half: Half | undefined] {
  const [, name, half] = typeof text === "string" ? (/^(.+)\/(upper|lower)$/.exec(text) ?? []) : [];
  return name === undefined ? [text, undefined] : [name, half === "upper" ? "upper" : "lower"];
}

class IntentReader extends JsonReader {
  readonly #box: Box;
  readonly #cables: readonly Installation["cables"][CableId][];

  constructor(installation: Installation, box: Box) {
    super();
    this.#box = box;
    this.#cables = cablesInto(installation.cables, box.id).map(({ cable }) => cable);
  }

  read(input: unknown): MakeUpIntent | undefined {
    const it = this.record(input, "", FIELDS);
    if (this.problems.length > 0) return undefined;
    const supply = this.#supply(it.supply);
    const each = <T>(list: unknown, path: string, read: (item: unknown, at: string) => T | undefined): readonly T[] =>
      this.list(list, path).flatMap(([item, at]) => read(item, at) ?? []);
    const intent = {
      downstream: each(it.downstream, "/downstream", (item, at) => {
        const one = this.record(item, at, ["cable", "protect", "leg"]);
        const cable = this.#cable(one.cable, `${at}/cable`);
        return (
          cable && { cable, protect: this.#flag(one.protect, `${at}/protect`), ...this.#leg(one.leg, `${at}/leg`) }
        );
      }),
      switched: each(it.switched, "/switched", (item, at) => {
        const one = this.record(item, at, ["cable", "switch", "protect", "conductor", "leg"]);
        const cable = this.#cable(one.cable, `${at}/cable`);
        const by = this.#device(one.switch, `${at}/switch`);
        const protect = this.#flag(one.protect, `${at}/protect`);
        const conductor =
          one.conductor === undefined ? undefined : this.#conductor(one.conductor, `${at}/conductor`, cable);
        if (cable === undefined || by === undefined) return undefined;
        return { cable, switch: by, protect, ...(conductor && { conductor }), ...this.#leg(one.leg, `${at}/leg`) };
      }),
      loops: each(it.loops, "/loops", (item, at) => {
        const one = this.record(item, at, ["cable", "protect", "feeds", "leg"]);
        const cable = this.#cable(one.cable, `${at}/cable`);
        const feeds = this.record(one.feeds ?? {}, `${at}/feeds`, ["cables", "devices"]);
        const feedsCables = each(feeds.cables, `${at}/feeds/cables`, (name, where) => this.#cable(name, where));
        const fed = each(feeds.devices, `${at}/feeds/devices`, (text, where) => {
          const [name, half] = halfOf(text);
          const device = this.#device(name, where);
          return device && { device, half };
        });
        const feedsDevices = fed.flatMap(({ device, half }) => (half === undefined ? device : []));
        const feedsHalves = fed.flatMap(({ device, half }) => (half === undefined ? [] : outletKey(device, half)));
        const protect = this.#flag(one.protect, `${at}/protect`);
        return (
          cable && {
            cable,
            protect,
            feedsCables,
            feedsDevices,
            ...(feedsHalves.length > 0 && { feedsHalves }),
            ...this.#leg(one.leg, `${at}/leg`),
          }
        );
      }),
      travellers: each(it.travellers, "/travellers", (item, at) => {
        const one = this.record(item, at, ["cable", "switch", "protect", "leg"]);
        const cable = this.#cable(one.cable, `${at}/cable`);
        const by = this.#device(one.switch, `${at}/switch`);
        const protect = this.#flag(one.protect, `${at}/protect`);
        if (cable === undefined || by === undefined) return undefined;
        return { cable, switch: by, protect, ...this.#leg(one.leg, `${at}/leg`) };
      }),
      devices: each(it.devices, "/devices", (item, at) => {
        const one = this.record(item, at, ["device", "protect", "switch", "leg"]);
        const [name, half] = halfOf(one.device);
        const device = this.#device(name, `${at}/device`);
        const by = one.switch === undefined ? undefined : this.#device(one.switch, `${at}/switch`);
        const protect = this.#flag(one.protect, `${at}/protect`);
        return (
          device && {
            device,
            protect,
            ...(half && { half }),
            ...(by && { switch: by }),
            ...this.#leg(one.leg, `${at}/leg`),
          }
        );
      }),
      replace: each(it.replace, "/replace", (item, at) => this.#replacing(item, at)),
      style: {
        direct: this.#flag(it.direct, "/direct", USUAL_STYLE.direct),
        bothHoles: this.#flag(it.bothHoles, "/bothHoles"),
        noPushIn: this.#flag(it.noPushIn, "/noPushIn"),
        ...(it.connectors !== undefined && {
          connectors: each(it.connectors, "/connectors", (id, at) => this.#connector(id, at)),
        }),
      },
    };
    return supply && { supply, ...intent };
  }

  /** The plain way to say it is the name of the cable alone. */
  #supply(input: unknown): SupplyUse | undefined {
    if (typeof input === "string") {
      const cable = this.#cable(input, "/supply");
      return cable && { cable, as: "feed" };
    }
    if (input === undefined) {
      this.refuse("missing", "/supply", wording.supply);
      return undefined;
    }
    const one = this.record(input, "/supply", ["cable", "as", "leg", "switch"]);
    const cable = this.#cable(one.cable, "/supply/cable");
    const as = one.as === undefined ? "feed" : this.oneOf(one.as, "/supply/as", SUPPLIES);
    const leg = one.leg === undefined ? undefined : this.#conductor(one.leg, "/supply/leg", cable);
    const by = one.switch === undefined ? undefined : this.#device(one.switch, "/supply/switch");
    return cable && as && { cable, as, ...(leg && { leg }), ...(by && { switch: by }) };
  }

  #replacing(input: unknown, at: string): Replacing | undefined {
    const one = this.record(input, at, ["device", "type", "name"]);
    const device = this.#device(one.device, `${at}/device`);
    const type = this.text(one.type, `${at}/type`);
    const name = one.name === undefined ? undefined : this.text(one.name, `${at}/name`);
    if (device === undefined || type === undefined) return undefined;
    if (findDeviceType(type) === undefined) {
      this.refuse("unknown-type", `${at}/type`, wording.noType(shown(type)));
      return undefined;
    }
    return { device, type, ...(name !== undefined && { name }) };
  }

  #connector(input: unknown, at: string): string | undefined {
    const found = connectors.find(({ id }) => id === input);
    if (found !== undefined) return found.id;
    this.refuse("unknown-connector", at, wording.noConnector(shown(input), connectors.map(({ id }) => id).join(", ")));
    return undefined;
  }

  #flag(input: unknown, at: string, unsaid = false): boolean {
    if (input === undefined) return unsaid;
    if (typeof input === "boolean") return input;
    this.refuse("not-true-or-false", at, wording.flag(shown(input)));
    return unsaid;
  }

  #leg(input: unknown, at: string): { readonly leg?: ConductorKey } {
    if (input === undefined) return {};
    const leg = this.text(input, at);
    const known = this.#cables.flatMap(({ conductors }) => Object.entries(conductors));
    const found = known.find(([key, { colour }]) => key === leg || colour === leg);
    if (found !== undefined) return { leg: found[0] as ConductorKey };
    if (leg !== undefined) this.refuse("no-such-leg", at, wording.noLeg(shown(leg)));
    return {};
  }

  #conductor(input: unknown, at: string, cable: CableId | undefined): ConductorKey | undefined {
    const text = this.text(input, at);
    const found = this.#cables.find(({ id }) => id === cable);
    if (text === undefined || found === undefined) return undefined;
    const key = Object.entries(found.conductors).find(([one, { colour }]) => one === text || colour === text)?.[0];
    if (key !== undefined) return key as ConductorKey;
    const keys = Object.keys(found.conductors).join(", ");
    this.refuse("no-such-conductor", at, wording.noConductor(found.name, shown(text), keys));
    return undefined;
  }

  #cable = (input: unknown, at: string): CableId | undefined =>
    this.#find(input, at, this.#cables, "cable") as CableId | undefined;

  #device = (input: unknown, at: string): DeviceId | undefined =>
    this.#find(input, at, Object.values(this.#box.devices), "device") as DeviceId | undefined;

  #find(input: unknown, at: string, all: readonly Named[], what: "cable" | "device"): string | undefined {
    const text = this.text(input, at);
    if (text === undefined) return undefined;
    const byId = all.find(({ id }) => id === text);
    const named = all.filter(({ name }) => name === text);
    if (byId !== undefined) return byId.id;
    if (named.length === 1) return named[0]?.id;
    const names = all.map(({ name }) => name).join(", ");
    if (named.length > 1)
      this.refuse(
        "not-unique",
        at,
        (what === "cable" ? wording.cableSeveral : wording.deviceSeveral)(this.#box.name, shown(text)),
      );
    else
      this.refuse(
        `no-such-${what}`,
        at,
        (what === "cable" ? wording.noCable : wording.noDevice)(
          this.#box.name,
          shown(text),
          names === "" ? wording.none : names,
        ),
      );
    return undefined;
  }
}
