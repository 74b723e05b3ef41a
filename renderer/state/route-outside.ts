import type { CableId, EnclosureId } from "../../shared-model/model/ids.ts";
import { UNNAMED_SIDE } from "../../shared-model/queries/far-side.ts";
import { getEnclosure } from "../../shared-model/queries/find-item.ts";
import { rememberCableKind } from "./cable-kind.ts";
import { type Dispatched, dispatch, documentStore, shownInstallation } from "./document-store.ts";
import { mintId } from "./mint-id.ts";
import { nextCableName } from "./naming.ts";
import { freeSide } from "./placing.ts";
import { select, sessionStore } from "./session-store.ts";

/** Runs a cable of the stock from an enclosure to where the drawing ends, and selects it. */
export function routeToOutside(item: string, from: EnclosureId): Dispatched {
  const { state } = documentStore.get();
  const installation = shownInstallation();
  const id = mintId<CableId>("c");
  const done = dispatch({
    command: "route-cable",
    args: {
      state,
      id,
      item,
      name: nextCableName(installation),
      a: freeSide(installation, getEnclosure(installation, from)),
      b: { outside: UNNAMED_SIDE },
    },
  });
  if (done.ok) {
    rememberCableKind(item);
    select({ kind: "cable", id });
  }
  sessionStore.merge({ routeFrom: undefined });
  return done;
}
