import { memo, useMemo } from "react";
import type { CableId } from "../../../shared-model/model/ids.ts";
import { USUAL_SET } from "../../../shared-model/model/symbol-set.ts";
import { type DocumentState, documentStore } from "../../state/document-store.ts";
import { sessionStore } from "../../state/session-store.ts";
import { useStore } from "../../state/use-store.ts";
import { shownDifference } from "../difference.ts";
import type { RoomSign } from "../room-signs.ts";
import type { Road } from "../sheet-roads.ts";
import { FarLayer } from "./far-layer.tsx";
import type { RoadTraits } from "./far-paint-roads.ts";
import type { FarItem } from "./far-scene.ts";

interface Props {
  readonly document: DocumentState;
  readonly items: readonly FarItem[];
  readonly roads: readonly Road[];
  readonly rooms: readonly RoomSign[];
  readonly guarded: ReadonlySet<CableId>;
  readonly unit: number;
}

/** The painted layer, with what is to be told apart among its cables. */
export const FarRoads = memo(function FarRoads({ document, items, roads, rooms, guarded, unit }: Props) {
  const chosen = useStore(sessionStore, chosenCables);
  const set = useStore(documentStore, ({ project }) => project.symbols ?? USUAL_SET);
  const fresh = shownDifference(document)?.cables;
  const traits = useMemo((): RoadTraits => {
    const picked = new Set(chosen.split(" "));
    return {
      isNew: ({ cable }) => fresh?.get(cable) === "new",
      isChosen: ({ cable }) => picked.has(cable),
      isGuarded: ({ cable }) => guarded.has(cable),
    };
  }, [chosen, fresh, guarded]);
  return <FarLayer items={items} roads={roads} rooms={rooms} traits={traits} set={set} unit={unit} />;
});

/** One text while the same cables are selected. */
const chosenCables = ({ selection }: ReturnType<typeof sessionStore.get>): string =>
  selection.flatMap((each) => (each.kind === "cable" ? [each.id] : [])).join(" ");
