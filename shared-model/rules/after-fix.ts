import type { CommandCall } from "../answers/command-call.ts";
import type { Fix } from "../answers/finding.ts";
import { getDeviceType } from "../catalog/device-types.ts";
import type { Device } from "../model/device.ts";
import type { Enclosure, Jumper } from "../model/enclosure.ts";
import { type DeviceId, type EnclosureId, type EndKey, jumperEnd } from "../model/ids.ts";
import type { At } from "../model/place.ts";
import type { Installation } from "../model/project.ts";

/** The wiring as a fix would leave it; undefined when it holds a command that is not followed here. */
export function afterFix(installation: Installation, { call }: Fix): Installation | undefined {
  const calls = call.command === "run-together" ? (call.args as { calls: readonly CommandCall[] }).calls : [call];
  let after: Installation | undefined = installation;
  for (const one of calls) after = after === undefined ? undefined : afterCall(after, one);
  return after;
}

interface Args {
  readonly enclosure: EnclosureId;
  readonly end: EndKey;
  readonly at: At;
  readonly splice: Enclosure["splices"][keyof Enclosure["splices"]]["id"];
  readonly name: string;
  readonly connector: string;
  readonly ends: readonly EndKey[];
  readonly jumper: Jumper["id"];
  readonly awg: Jumper["awg"];
  readonly colour: Jumper["colour"];
  readonly from: At;
  readonly to: At;
  readonly items: readonly { readonly kind: string; readonly id: string }[];
  readonly device: DeviceId;
  readonly id: DeviceId;
  readonly type: string;
}

function afterCall(installation: Installation, { command, args }: CommandCall): Installation | undefined {
  const a = args as Args;
  switch (command) {
    case "change-connector":
      return installation;
    case "land-end":
      return inBox(installation, a.enclosure, (box) => withPlaces(box, [[a.end, a.at]]));
    case "join-splice":
      return inBox(installation, a.enclosure, (box) =>
        withPlaces(box, [[a.end, { kind: "splice", splice: a.splice }]]),
      );
    case "splice-ends":
      return inBox(installation, a.enclosure, (box) => {
        const made = { id: a.splice, name: a.name, connector: a.connector, order: 0 };
        const at: At = { kind: "splice", splice: a.splice };
        const ends = a.ends.map((end) => [end, at] as const);
        return withPlaces({ ...box, splices: { ...box.splices, [made.id]: made } }, ends);
      });
    case "add-jumper":
      return inBox(installation, a.enclosure, (box) => {
        const { jumper: id, name, awg, colour } = a;
        const made: Jumper = { id, name, awg, colour, material: "copper", stranded: false, order: 0 };
        return withPlaces({ ...box, jumpers: { ...box.jumpers, [id]: made } }, [
          [jumperEnd(id, "a"), a.from],
          [jumperEnd(id, "b"), a.to],
        ]);
      });
    case "remove-items":
      return a.items.reduce<Installation | undefined>(
        (after, item) => (after === undefined || item.kind !== "jumper" ? undefined : withoutJumper(after, item.id)),
        installation,
      );
    case "replace-device":
      return withReplaced(installation, a);
    default:
      return undefined;
  }
}

function inBox(
  installation: Installation,
  id: EnclosureId,
  change: (box: Enclosure) => Enclosure,
): Installation | undefined {
  const box = installation.enclosures[id];
  if (box === undefined) return undefined;
  return { ...installation, enclosures: { ...installation.enclosures, [id]: change(box) } };
}

const withPlaces = (box: Enclosure, ends: readonly (readonly [end: EndKey, at: At])[]): Enclosure => ({
  ...box,
  places: { ...box.places, ...Object.fromEntries(ends.map(([end, at]) => [end, { ...box.places[end], at }])) },
});

function withoutJumper(installation: Installation, id: string): Installation | undefined {
  const box = Object.values(installation.enclosures).find(({ jumpers }) => id in jumpers);
  if (box === undefined) return undefined;
  const { [id as Jumper["id"]]: _gone, ...jumpers } = box.jumpers;
  const places = Object.fromEntries(Object.entries(box.places).filter(([end]) => !end.startsWith(`${id}.`)));
  return inBox(installation, box.id, (old) => ({ ...old, jumpers, places }));
}

/** Ends on the old device are taken to be put where the fix says next. */
function withReplaced(installation: Installation, { device: old, id, type, name }: Args): Installation | undefined {
  const box = Object.values(installation.enclosures).find(({ devices }) => old in devices);
  const found = box?.devices[old];
  if (box === undefined || found === undefined) return undefined;
  const { [old]: _gone, ...devices } = box.devices;
  const { zones, order } = found;
  const made: Device = {
    ...getDeviceType(type).defaults,
    id,
    name,
    type,
    order,
    ...(zones !== undefined && { zones }),
  };
  const places = Object.entries(box.places).map(([end, place]) => {
    const { at } = place;
    if (at.kind !== "terminal" || at.device !== old) return [end, place] as const;
    const stays = getDeviceType(type).terminals.some((terminal) => terminal.name === at.terminal);
    return [end, { ...place, at: stays ? { ...at, device: id } : ({ kind: "capped" } as const) }] as const;
  });
  return inBox(installation, box.id, (whole) => ({
    ...whole,
    devices: { ...devices, [id]: made },
    places: Object.fromEntries(places),
  }));
}
