import type { Enclosure } from "../../shared-model/model/enclosure.ts";
import type { DeviceId, EndKey, JumperId, SpliceId, TerminalName } from "../../shared-model/model/ids.ts";
import { landedAt } from "../../shared-model/queries/landings.ts";
import { usualConnector } from "../../shared-model/queries/usual-connector.ts";
import { type Dispatched, dispatch, documentStore, shownInstallation } from "./document-store.ts";
import { mintId } from "./mint-id.ts";
import { nextJumperName, nextSpliceName } from "./naming.ts";

/** Moves everything on a terminal into a splice and brings one jumper from there to the terminal. */
export function pigtail(enclosure: Enclosure, device: DeviceId, terminal: TerminalName): Dispatched {
  const { state } = documentStore.get();
  const installation = shownInstallation();
  const ends: readonly EndKey[] = landedAt(enclosure, device, terminal).map(({ end }) => end);
  // The jumper joins the splice as one more conductor of the same size.
  const joined = ends[0] === undefined ? ends : [...ends, ends[0]];
  return dispatch({
    command: "pigtail-terminal",
    args: {
      state,
      enclosure: enclosure.id,
      device,
      terminal,
      splice: mintId<SpliceId>("s"),
      spliceName: nextSpliceName(installation, enclosure, ends),
      connector: usualConnector(installation, enclosure, joined),
      connectorAssumed: true,
      jumper: mintId<JumperId>("j"),
      jumperName: nextJumperName(enclosure),
    },
  });
}
