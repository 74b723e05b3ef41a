import { findEnclosureItem } from "../../shared-model/catalog/enclosure-items.ts";
import { findLoadItem } from "../../shared-model/catalog/load-items.ts";
import type { SideTarget, TypedCall } from "../../shared-model/commands/command-args.ts";
import type { Enclosure, EntryMeans } from "../../shared-model/model/enclosure.ts";
import type { CableId, DeviceId, EnclosureId, EntryId, LoadId, OutletKey } from "../../shared-model/model/ids.ts";
import type { Installation, Point } from "../../shared-model/model/project.ts";
import { cablesInto } from "../../shared-model/queries/cables-into.ts";
import { getEnclosure } from "../../shared-model/queries/find-item.ts";
import { inOrder } from "../../shared-model/queries/in-order.ts";
import { outletsOf, type PlacedOutlet } from "../../shared-model/queries/outlets-of.ts";
import { rememberCableKind } from "./cable-kind.ts";
import { type Dispatched, dispatch, documentStore, shownInstallation } from "./document-store.ts";
import { mintId } from "./mint-id.ts";
import { nextCableName, nextDeviceName, nextEnclosureName, nextLoadName } from "./naming.ts";
import { select, sessionStore } from "./session-store.ts";

/** Places a box or panel of the stock at a point of the sheet and selects it. */
export function placeEnclosure(item: string, at: Point): Dispatched {
  const { state } = documentStore.get();
  const id = mintId<EnclosureId>("b");
  const panel = findEnclosureItem(item)?.make.kind === "panel";
  const done = dispatch({
    command: "place-enclosure",
    args: {
      state,
      id,
      item,
      name: nextEnclosureName(shownInstallation(), panel ? "panel" : "box"),
      at,
      ...(panel && { bars: { neutral: mintId<DeviceId>("d"), ground: mintId<DeviceId>("d") } }),
    },
  });
  if (done.ok) select({ kind: "enclosure", id });
  return done;
}

/** What `placeDevice` would run, to be asked whether it may. @param name That it would get. */
export const tryDevice = (type: string, enclosure: EnclosureId, name: string): TypedCall => ({
  command: "place-device",
  args: { state: documentStore.get().state, enclosure, id: "new" as DeviceId, type, name },
});

/** Places a device of the stock in an enclosure and selects it. */
export function placeDevice(type: string, enclosure: EnclosureId): Dispatched {
  const { state } = documentStore.get();
  const id = mintId<DeviceId>("d");
  const name = nextDeviceName(shownInstallation(), type);
  const done = dispatch({ command: "place-device", args: { state, enclosure, id, type, name } });
  if (done.ok) select({ kind: "device", id });
  return done;
}

/** Runs a cable of the stock between two enclosures and selects it. */
export function routeCable(item: string, from: EnclosureId, to: EnclosureId): Dispatched {
  const { state } = documentStore.get();
  const installation = shownInstallation();
  const id = mintId<CableId>("c");
  const a = freeSide(installation, getEnclosure(installation, from));
  const b = freeSide(installation, getEnclosure(installation, to));
  const done = dispatch({
    command: "route-cable",
    args: { state, id, item, name: nextCableName(installation), a, b },
  });
  if (done.ok) {
    rememberCableKind(item);
    select({ kind: "cable", id });
  }
  sessionStore.merge({ routeFrom: undefined });
  return done;
}

/** The outlet that something is plugged into at a device, else at the first receptacle of a box. */
export function outletFor(
  { enclosures }: Installation,
  enclosure: EnclosureId | undefined,
  device: DeviceId | undefined,
): PlacedOutlet | undefined {
  const box = enclosure && enclosures[enclosure];
  const devices = box === undefined ? [] : Object.values(box.devices);
  const wanted = device === undefined ? devices : devices.filter(({ id }) => id === device);
  return wanted.flatMap((each) => outletsOf(each)).find(({ receptacle }) => receptacle);
}

/** Plugs a load of the stock into an outlet. */
export function placeLoad(item: string, plug: OutletKey): Dispatched {
  const { state } = documentStore.get();
  const id = mintId<LoadId>("k");
  const title = findLoadItem(item)?.title;
  const name = title ?? nextLoadName(shownInstallation());
  const done = dispatch({ command: "place-load", args: { state, id, item, name, plug } });
  if (done.ok) select({ kind: "load", id });
  return done;
}

/** An entry without a cable if the enclosure has one, else an entry to make, held as its clamps allow. */
export function freeSide(installation: Installation, enclosure: Enclosure): SideTarget {
  const used = new Set(cablesInto(installation.cables, enclosure.id).map(({ entry }) => entry));
  const free = inOrder(enclosure.entries).find((entry) => !used.has(entry.id));
  if (free !== undefined) return { enclosure: enclosure.id, entry: free.id };
  return { enclosure: enclosure.id, newEntry: mintId<EntryId>("e"), means: usualMeans(enclosure) };
}

function usualMeans(enclosure: Enclosure): EntryMeans {
  if (enclosure.kind === "panel" || enclosure.internalClamps === "none") return "external-connector";
  return enclosure.internalClamps === "included-in-marked-volume" ? "integral-clamp" : "internal-clamp";
}
