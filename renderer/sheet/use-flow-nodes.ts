import { useMemo, useState } from "react";
import { sessionStore } from "../state/session-store.ts";
import { sameList, useStore } from "../state/use-store.ts";
import { gestureStore } from "./gesture-store.ts";
import type { SheetDrawings } from "./sheet-drawings.ts";
import { type BoxFlowNode, createToFlow } from "./to-flow.ts";

/** Flow nodes of the drawn boxes where they stand now; boxes that did not change keep their node. */
export function useFlowNodes(shown: SheetDrawings): BoxFlowNode[] {
  const [toFlow] = useState(createToFlow);
  const moving = useStore(gestureStore, movingOf);
  const chosen = useStore(sessionStore, selectedBoxes, sameList);
  const heldIn = useStore(sessionStore, heldInOf);
  const jumperIn = useStore(gestureStore, jumperInOf);
  const raised = heldIn ?? jumperIn;
  return useMemo(() => toFlow(shown, moving, new Set(chosen), raised), [toFlow, shown, moving, chosen, raised]);
}

type Session = ReturnType<typeof sessionStore.get>;
type Gesture = ReturnType<typeof gestureStore.get>;

const movingOf = ({ moving }: Gesture) => moving;
const heldInOf = ({ held }: Session) => held?.enclosure;
const jumperInOf = ({ jumper }: Gesture) => jumper?.enclosure;
const selectedBoxes = ({ selection }: Session) =>
  selection.flatMap((each) => (each.kind === "enclosure" ? [each.id] : []));
