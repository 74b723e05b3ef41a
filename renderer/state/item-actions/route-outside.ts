import type { CableId, EnclosureId } from "../../../shared-model/model/ids.ts";
import { getEnclosure } from "../../../shared-model/queries/find-item.ts";
import { type Dispatched, dispatch, documentStore, shownInstallation } from "../document-store.ts";
import { mintId } from "../mint-id.ts";
import { nextCableName } from "../naming.ts";
import { freeSide } from "../placing.ts";
import { select } from "../session-store.ts";

/** Runs a cable of the stock from an enclosure into country that is not drawn, and selects it. */
export function routeOutside(item: string, from: EnclosureId): Dispatched {
  const { state } = documentStore.get();
  const installation = shownInstallation();
  const id = mintId<CableId>("c");
  const a = freeSide(installation, getEnclosure(installation, from));
  const done = dispatch({
    command: "route-cable",
    args: { state, id, item, name: nextCableName(installation), a, b: { outside: "not drawn" } },
  });
  if (done.ok) select({ kind: "cable", id });
  return done;
}
