import { useStore as useFlowStore } from "@xyflow/react";
import { useCallback, useMemo, useState } from "react";
import type { EnclosureId } from "../../shared-model/model/ids.ts";
import { sessionStore } from "../state/session-store.ts";
import { sameList, useStore } from "../state/use-store.ts";
import { levelNow } from "./detail.ts";
import { MOST_SHELLS, pointedStore } from "./far/shells.ts";
import { gestureStore } from "./gesture-store.ts";
import { openStore } from "./open-boxes.ts";
import type { SheetDrawings } from "./sheet-drawings.ts";
import { type BoxFlowNode, createToFlow, type Opened } from "./to-flow.ts";
import { hereStore } from "./walk/here.ts";

/** Flow nodes of the drawn boxes where they stand now; boxes that did not change keep their node. */
export function useFlowNodes(shown: SheetDrawings): BoxFlowNode[] {
  const [toFlow] = useState(createToFlow);
  const moving = useStore(gestureStore, movingOf);
  const chosen = useStore(sessionStore, selectedBoxes, sameList);
  const heldIn = useStore(sessionStore, heldInOf);
  const jumperIn = useStore(gestureStore, jumperInOf);
  const raised = heldIn ?? jumperIn;
  const open = useOpened();
  const selected = useMemo(() => new Set(chosen), [chosen]);
  const nodes = useMemo(
    () => toFlow(shown, moving, selected, raised, open),
    [toFlow, shown, moving, selected, raised, open],
  );
  const few = useFlowStore(isFar) && nodes.length > MOST_SHELLS;
  const pointed = useStore(pointedStore, ({ box }) => box);
  const walked = useStore(hereStore, ({ at }) => at?.box);
  return useMemo(() => {
    if (!few) return nodes;
    const isAt = (id: EnclosureId): boolean =>
      id === pointed || id === walked || id === raised || selected.has(id) || moving.has(id);
    return nodes.filter(({ data: { enclosure: id } }) => isAt(id) || open.ids.includes(id));
  }, [few, nodes, pointed, walked, raised, selected, moving, open]);
}

const isFar = (seen: Parameters<typeof levelNow>[0]): boolean => levelNow(seen) === "far";

interface Seen {
  readonly transform: readonly [number, number, number];
  readonly width: number;
  readonly height: number;
}

/** Zooming renders the nodes only while a box is open. */
function useOpened(): Opened {
  const ids = useStore(openStore, idsOf);
  const none = ids.length === 0;
  const zoom = useFlowStore(useCallback(({ transform }: Seen) => (none ? 1 : transform[2]), [none]));
  const width = useFlowStore(useCallback((seen: Seen) => (none ? 0 : seen.width), [none]));
  const height = useFlowStore(useCallback((seen: Seen) => (none ? 0 : seen.height), [none]));
  return useMemo(() => ({ ids, view: { zoom, width, height } }), [ids, zoom, width, height]);
}

const idsOf = ({ ids }: { readonly ids: readonly EnclosureId[] }) => ids;

type Session = ReturnType<typeof sessionStore.get>;
type Gesture = ReturnType<typeof gestureStore.get>;

const movingOf = ({ moving }: Gesture) => moving;
const heldInOf = ({ held }: Session) => held?.enclosure;
const jumperInOf = ({ jumper }: Gesture) => jumper?.enclosure;
const selectedBoxes = ({ selection }: Session) =>
  selection.flatMap((each) => (each.kind === "enclosure" ? [each.id] : []));
