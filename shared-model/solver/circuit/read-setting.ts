import { getDeviceType } from "../../catalog/device-types.ts";
import { catalogue, type Part } from "../../lib/catalogue.ts";
import type { Result } from "../../lib/result.ts";
import type { Device } from "../../model/device.ts";
import type { DeviceId, LoadId } from "../../model/ids.ts";
import type { Installation } from "../../model/project.ts";
import { outletsOf, type PlacedOutlet } from "../../queries/outlets-of.ts";
import type { Added, OperatingSetting, Probe } from "./circuit.ts";
import { usesOf } from "./device-uses.ts";
import { handlesOf } from "./handles.ts";
import { isRecord, JsonReader, shown, step } from "./json-reader.ts";
import { LEAK_TEST_OHM } from "./modelling-values.ts";
import { Named } from "./named-items.ts";
import { ownTestOf, plugInTestAt } from "./test-currents.ts";

const wording = catalogue({
  offAndTripped: (nameOf: Part) => `${nameOf} cannot be off and tripped: name it once`,
  giveObject: (is: Part) => `Give an object such as {"S1": "off"}; it is ${is}`,
  givenTwice: (name: Part) => `${name} is given two positions: give one`,
  usesNothing: (name: Part) => `${name} uses nothing itself: name what is plugged into it`,
  leakToItself: (conductor: Part) => `A leak goes from one conductor to another; both are "${conductor}"`,
  unknown: (name: Part) => `Nothing drawn here has the id or name ${name}: check it`,
  severalCalled: (count: Part, name: Part, ids: Part) => `${count} items are called ${name}: give an id, one of ${ids}`,
  cannotTrip: (name: Part) => `${name} is no ground-fault device, breaker or fuse`,
  givePosition: (positions: Part, device: Part, is: Part) => `Give ${positions} for ${device}; it is ${is}`,
  isNoBreaker: (name: Part) => `${name} is no breaker, fuse or disconnect`,
  isNoGroundFaultDevice: (name: Part) => `${name} is no ground-fault device`,
  isOutlets: (name: Part, count: Part, halves: Part) => `${name} is ${count} outlets: name ${halves}`,
  nameHandle: (device: Part, handles: Part) => `${device} has no such handle: name one of ${handles}`,
  noGround: (outlet: Part) => `${outlet} has no ground contact`,
  noHandle: (device: Part) =>
    `${device} has no such handle: breakers go under "off", what uses something under "unplugged"`,
  noHot: (outlet: Part) => `${outlet} has no hot contact`,
  noNeutral: (outlet: Part) => `${outlet} has no neutral contact`,
  noOutlet: (name: Part) => `${name} is no outlet, luminaire or appliance`,
  or: " or ",
});

/** What a person may write down as a setting; whatever it does not name is on, in its drawn position, reset and in use. */
const FIELDS = ["off", "switches", "tripped", "unplugged", "leaks", "ownTest", "plugInTest"] as const;

/**
 * Reads an operating setting from parsed JSON. Items are named by id or by a name that only one of them has. Every problem
 * is told with its place: unknown names, things that cannot be operated so, contradictions, values out of range.
 */
export function readSetting(input: unknown, installation: Installation): Result<OperatingSetting> {
  const reader = new SettingReader(installation);
  const setting = reader.read(input);
  return reader.problems.length === 0 ? { ok: true, value: setting } : { ok: false, problems: reader.problems };
}

const CONTACTS = ["hot", "neutral", "ground"] as const;

const NO_CONTACT: Readonly<Record<(typeof CONTACTS)[number], (outlet: string) => string>> = {
  hot: wording.noHot,
  neutral: wording.noNeutral,
  ground: wording.noGround,
};

class SettingReader extends JsonReader {
  private readonly named: Named;

  constructor(installation: Installation) {
    super();
    this.named = new Named(installation);
  }

  read(input: unknown): OperatingSetting {
    const it = this.record(input, "", FIELDS);
    const off = this.devices(it.off, "/off", isBreaker, wording.isNoBreaker);
    const tripped = this.devices(it.tripped, "/tripped", canTrip, wording.cannotTrip);
    for (const id of off.keys()) {
      const at = tripped.get(id);
      if (at !== undefined) this.refuse("contradiction", at, wording.offAndTripped(this.named.nameOf(id)));
    }
    return {
      off: new Set(off.keys()),
      tripped: new Set(tripped.keys()),
      positions: this.positions(it.switches),
      idle: this.idle(it.unplugged),
      added: [...this.leaks(it.leaks), ...this.ownTests(it.ownTest), ...this.plugInTests(it.plugInTest)],
    };
  }

  private devices(
    input: unknown,
    path: string,
    fits: (device: Device) => boolean,
    otherwise: (name: string) => string,
  ): ReadonlyMap<DeviceId, string> {
    const found = new Map<DeviceId, string>();
    for (const [item, at] of this.list(input, path)) {
      const device = this.device(item, at);
      if (device === undefined) continue;
      if (fits(device)) found.set(device.id, at);
      else this.refuse("wrong-kind", at, otherwise(device.name));
    }
    return found;
  }

  private positions(input: unknown): ReadonlyMap<string, number> {
    const positions = new Map<string, number>();
    if (input === undefined) return positions;
    if (!isRecord(input)) {
      this.refuse("not-an-object", "/switches", wording.giveObject(shown(input)));
      return positions;
    }
    for (const [name, value] of Object.entries(input)) {
      const at = `/switches/${step(name)}`;
      const [who = "", terminal] = this.named.has(name) ? [name] : splitAtLast(name);
      const device = this.device(who, at);
      if (device === undefined) continue;
      const handles = handlesOf(device).filter((handle) => terminal === undefined || handle.terminal === terminal);
      const position = (getDeviceType(device.type).positions as readonly unknown[]).indexOf(value);
      const choices = getDeviceType(device.type).positions.map((one) => `"${one}"`);
      if (handles.length === 0) {
        const all = handlesOf(device).map((handle) => `"${device.name}/${handle.terminal}"`);
        const message =
          all.length > 1 ? wording.nameHandle(device.name, all.join(", ")) : wording.noHandle(device.name);
        this.refuse("no-handle", at, message);
      } else if (position < 0)
        this.refuse("no-position", at, wording.givePosition(choices.join(wording.or), device.name, shown(value)));
      else for (const { handle } of handles) this.setPosition(positions, handle, position, at, device);
    }
    return positions;
  }

  private setPosition(all: Map<string, number>, handle: string, position: number, at: string, { name }: Device): void {
    const before = all.get(handle);
    if (before !== undefined && before !== position) this.refuse("contradiction", at, wording.givenTwice(name));
    all.set(handle, position);
  }

  private idle(input: unknown): ReadonlySet<LoadId | DeviceId> {
    const found = new Set<LoadId | DeviceId>();
    for (const [item, at] of this.list(input, "/unplugged")) {
      const text = this.text(item, at);
      if (text === undefined) continue;
      const load = this.named.loads(text);
      const device = this.named.devices(text).filter(usesSomething);
      if (load.length + device.length > 1) this.ambiguous(text, at, [...load, ...device]);
      else if (load[0] !== undefined) found.add(load[0].id);
      else if (device[0] !== undefined) found.add(device[0].id);
      else if (this.named.devices(text).length > 0) this.refuse("wrong-kind", at, wording.usesNothing(text));
      else this.unknown(text, at);
    }
    return found;
  }

  private leaks(input: unknown): readonly Added[] {
    return this.list(input, "/leaks").flatMap(([item, path]) => {
      const it = this.record(item, path, ["at", "conductor", "to", "ohm"]);
      const outlet = this.outlet(it.at, `${path}/at`);
      const conductor = this.oneOf(it.conductor ?? "hot", `${path}/conductor`, CONTACTS);
      const to = this.oneOf(it.to ?? "earth", `${path}/to`, ["earth", ...CONTACTS]);
      const ohm = this.ohms(it.ohm ?? LEAK_TEST_OHM, `${path}/ohm`);
      if (outlet === undefined || conductor === undefined || to === undefined || ohm === undefined) return [];
      if (to === conductor) {
        this.refuse("contradiction", `${path}/to`, wording.leakToItself(to));
        return [];
      }
      const from = this.contact(outlet, conductor, `${path}/conductor`);
      const other: Probe | undefined = to === "earth" ? { kind: "earth" } : this.contact(outlet, to, `${path}/to`);
      return from === undefined || other === undefined ? [] : [{ from, to: other, ohm }];
    });
  }

  private ownTests(input: unknown): readonly Added[] {
    const devices = this.devices(
      input,
      "/ownTest",
      (device) => sensingOf(device) !== undefined,
      wording.isNoGroundFaultDevice,
    );
    return [...devices.keys()].flatMap((device) => {
      const found = this.named.byId(device);
      return (found && ownTestOf(found)) ?? [];
    });
  }

  private plugInTests(input: unknown): readonly Added[] {
    return this.list(input, "/plugInTest").flatMap(([item, path]) => {
      const outlet = this.outlet(item, path);
      // Says why there is none at an outlet without ground.
      const ground = outlet && this.contact(outlet, "ground", path);
      return outlet === undefined || ground === undefined ? [] : (plugInTestAt(outlet) ?? []);
    });
  }

  private contact(outlet: PlacedOutlet, which: (typeof CONTACTS)[number], at: string): Probe | undefined {
    const node = outlet[which];
    if (node !== undefined) return { kind: "device", device: outlet.device.id, node };
    this.refuse("no-contact", at, NO_CONTACT[which](outlet.name));
    return undefined;
  }

  private outlet(input: unknown, at: string): PlacedOutlet | undefined {
    const text = this.text(input, at);
    if (text === undefined) return undefined;
    const found = this.named.outlets(text);
    const [device] = this.named.devices(text);
    if (found.length > 1)
      this.ambiguous(
        text,
        at,
        found.map(({ key, name }) => ({ id: key, name })),
      );
    else if (found.length === 0 && device !== undefined) {
      const halves = outletsOf(device).map(({ name }) => `"${name}"`);
      const message =
        halves.length > 1
          ? wording.isOutlets(device.name, halves.length, halves.join(wording.or))
          : wording.noOutlet(device.name);
      this.refuse("wrong-kind", at, message);
    } else if (found.length === 0) this.unknown(text, at);
    return found.length === 1 ? found[0] : undefined;
  }

  private device(input: unknown, at: string): Device | undefined {
    const text = this.text(input, at);
    if (text === undefined) return undefined;
    const found = this.named.devices(text);
    if (found.length > 1) this.ambiguous(text, at, found);
    else if (found.length === 0) this.unknown(text, at);
    return found.length === 1 ? found[0] : undefined;
  }

  private unknown(text: string, at: string): void {
    this.refuse("unknown-item", at, wording.unknown(shown(text)));
  }

  private ambiguous(text: string, at: string, found: readonly { readonly id: string }[]): void {
    const ids = found.slice(0, 5).map(({ id }) => `"${id}"`);
    this.refuse("ambiguous-name", at, wording.severalCalled(found.length, shown(text), ids.join(", ")));
  }
}

const sensingOf = (device: Device) => getDeviceType(device.type).sensing;
const BREAKERS: ReadonlySet<string> = new Set(["breaker", "fuse", "disconnect"]);
const isBreaker = ({ type }: Device): boolean => BREAKERS.has(getDeviceType(type).family);
const canTrip = (device: Device): boolean => sensingOf(device) !== undefined || isBreaker(device);
const usesSomething = (device: Device): boolean =>
  usesOf(device).uses.some(({ kind, always }) => kind === "load" && !always);

/** "S1/L2" as device and terminal. */
function splitAtLast(name: string): readonly [string, string?] {
  const slash = name.lastIndexOf("/");
  return slash < 0 ? [name] : [name.slice(0, slash), name.slice(slash + 1)];
}
