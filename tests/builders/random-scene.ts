import { connectors } from "../../shared-model/catalog/connectors.ts";
import type { CommandArgs, SideTarget } from "../../shared-model/commands/command-args.ts";
import type { Enclosure } from "../../shared-model/model/enclosure.ts";
import type { AnyId, EndKey, TerminalName } from "../../shared-model/model/ids.ts";
import type { At } from "../../shared-model/model/place.ts";
import type { Project, StateName } from "../../shared-model/model/project.ts";
import { outletsOf } from "../../shared-model/queries/outlets-of.ts";
import { terminalsOf } from "../../shared-model/queries/terminals-of.ts";
import type { Picker } from "./picker.ts";

/** A drawing, the state that a random command is for, and the picker of its arguments. */
export interface Scene {
  readonly project: Project;
  readonly pick: Picker;
  readonly state: StateName;
  readonly index: number;
}

export const installation = ({ project, state }: Scene) =>
  (state === "as-found" ? project.asFound : project.proposed) ?? project.asFound;
export const idsIn = <K extends string>(table: Readonly<Record<K, unknown>>): readonly K[] => Object.keys(table) as K[];

/** Now and then an id that is already taken, or of something that is not there. */
export function fresh<T extends AnyId>({ pick, index, project }: Scene, suffix: string): T {
  if (pick.chance(0.03)) return pick.from(idsIn(project.asFound.enclosures), "b0") as string as T;
  return `n${index}${suffix}` as T;
}

export const enclosureId = (scene: Scene) => scene.pick.from(idsIn(installation(scene).enclosures), "gone");
export const enclosureAt = (scene: Scene, id: string): Enclosure | undefined =>
  Object.values(installation(scene).enclosures).find((one) => one.id === id);
export const everyDevice = (scene: Scene) =>
  Object.values(installation(scene).enclosures).flatMap((one) => Object.values(one.devices));
export const receptacles = (scene: Scene) =>
  everyDevice(scene).filter((device) => outletsOf(device).length > 0 || scene.pick.chance(0.05));
export const breakers = (scene: Scene) =>
  everyDevice(scene).filter(
    (device) => device.slot !== undefined || device.type.startsWith("breaker") || scene.pick.chance(0.05),
  );
export const deviceId = (scene: Scene) => scene.pick.from(everyDevice(scene), undefined)?.id ?? "gone";
export const endIn = ({ pick }: Scene, enclosure: Enclosure | undefined) =>
  pick.from(idsIn(enclosure?.places ?? {}), "gone.bk.a" as EndKey);

/** An enclosure that has ends, most of the time, and one of them. */
export function boxAndEnd(scene: Scene) {
  const wired = Object.values(installation(scene).enclosures).filter((one) => Object.keys(one.places).length > 0);
  const enclosure = scene.pick.from(wired, undefined);
  return { enclosure: enclosure?.id ?? enclosureId(scene), end: endIn(scene, enclosure), box: enclosure };
}

export function place({ pick }: Scene, enclosure: Enclosure | undefined): At {
  const devices = Object.values(enclosure?.devices ?? {});
  const splices = idsIn(enclosure?.splices ?? {});
  const device = pick.from(devices, undefined);
  const options: At[] = [{ kind: "capped" }, { kind: "loose" }, { kind: "bond" }];
  if (device !== undefined) {
    const terminal = pick.from(terminalsOf(device), undefined);
    const hole = 1 + pick.below((terminal?.holes ?? 1) + (pick.chance(0.05) ? 1 : 0));
    const at: At = { kind: "terminal", device: device.id, terminal: terminal?.name ?? ("X" as TerminalName), hole };
    options.push(at, at, at, at);
  }
  for (const splice of splices) options.push({ kind: "splice", splice });
  return pick.from(options, { kind: "capped" });
}

export function side(scene: Scene, suffix: string): SideTarget {
  const { pick } = scene;
  if (pick.chance(0.1)) return { outside: "to the garage" };
  const id = enclosureId(scene);
  const entries = idsIn(enclosureAt(scene, id)?.entries ?? {});
  const entry = pick.from(entries, undefined);
  if (entry !== undefined && pick.chance(0.3)) return { enclosure: id, entry } as SideTarget;
  const means = pick.from(["internal-clamp", "external-connector", "none"] as const, "none");
  return { enclosure: id, newEntry: fresh(scene, suffix), means } as SideTarget;
}

export function item(scene: Scene): CommandArgs["remove-items"]["items"][number] {
  const { pick, project } = scene;
  const { enclosures, cables, loads, labels } = installation(scene);
  const box = pick.from(Object.values(enclosures), undefined);
  const kinds = [
    ["enclosure", idsIn(enclosures)],
    ["cable", idsIn(cables)],
    ["device", everyDevice(scene).map((device) => device.id)],
    ["splice", idsIn(box?.splices ?? {})],
    ["jumper", idsIn(box?.jumpers ?? {})],
    ["load", idsIn(loads)],
    ["label", idsIn(labels)],
    ["room", idsIn(project.rooms)],
  ] as const;
  const [kind, ids] = pick.from(kinds, kinds[0]);
  return { kind, id: pick.from(ids as readonly string[], "gone") } as CommandArgs["remove-items"]["items"][number];
}

export const point = ({ pick }: Scene) => ({ x: pick.below(2_000) - 500, y: pick.below(2_000) - 500 });
export function outletIn(scene: Scene): string {
  const device = scene.pick.from(receptacles(scene), undefined);
  const outlet = device === undefined ? undefined : scene.pick.from(outletsOf(device), undefined);
  return scene.pick.chance(0.1) ? `${deviceId(scene)}/upper` : (outlet?.key ?? "gone");
}
export const connector = ({ pick }: Scene) =>
  pick.from([...connectors.map((one) => one.id), "none", "taped", "nonsense"], "none");
