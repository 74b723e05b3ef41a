import { findDeviceType } from "../../../shared-model/catalog/device-types.ts";
import type { Installation, Project } from "../../../shared-model/model/project.ts";
import type { Selected } from "../selection.ts";
import { goTo } from "../session-store.ts";
import type { CommandLine } from "./entry.ts";

/** Everything on the sheet that has a name; choosing it goes there. */
export function partLines(installation: Installation, project: Project): readonly CommandLine[] {
  const { enclosures, cables, loads } = installation;
  const line = (target: Selected, title: string, note: string): CommandLine => ({
    key: `${target.kind} ${target.id}`,
    title,
    note,
    group: "On the sheet",
    run: () => goTo(target, target.kind === "room" ? "rooms" : "details"),
  });
  const boxes = Object.values(enclosures);
  return [
    ...boxes.map(({ id, name, note, kind }) => line({ kind: "enclosure", id }, name, note ?? kind)),
    ...boxes.flatMap(({ devices, name: box }) =>
      Object.values(devices).map(({ id, name, type }) =>
        line({ kind: "device", id }, name, `${findDeviceType(type)?.caption ?? "device"} in ${box}`),
      ),
    ),
    ...Object.values(cables).map(({ id, name }) => line({ kind: "cable", id }, name, "cable")),
    ...boxes.flatMap(({ splices, name: box }) =>
      Object.values(splices).map(({ id, name }) => ({
        ...line({ kind: "splice", id }, name, `splice in ${box}`),
        fullName: `Splice ${name}`,
      })),
    ),
    ...boxes.flatMap(({ places, id: enclosure, name: box }) =>
      Object.entries(places).flatMap(([end, { tag }]) =>
        tag === undefined
          ? []
          : [line({ kind: "end", enclosure, id: end as keyof typeof places }, tag, `tag on an end in ${box}`)],
      ),
    ),
    ...Object.values(loads).map(({ id, name }) => line({ kind: "load", id }, name, "load")),
    ...Object.values(project.rooms).map(({ id, name }) => line({ kind: "room", id }, name, "room")),
  ];
}
