import { useStore as useFlowStore, useStoreApi } from "@xyflow/react";
import { useEffect } from "react";
import { useStore } from "../state/use-store.ts";
import { gestureStore } from "./gesture-store.ts";

const adding = ({ multiSelectionActive }: { readonly multiSelectionActive: boolean }): boolean => multiSelectionActive;

/** While boxes are chosen, a press on one adds it or takes it out, as with a key held. */
export function PressesAdd() {
  const choosing = useStore(gestureStore, (gesture) => gesture.choosing);
  const active = useFlowStore(adding);
  const flow = useStoreApi();
  useEffect(() => {
    // A key that is let go ends it too, so it is begun again.
    if (choosing && !active) flow.setState({ multiSelectionActive: true });
  }, [choosing, active, flow]);
  useEffect(() => {
    if (!choosing) return undefined;
    return () => flow.setState({ multiSelectionActive: false });
  }, [choosing, flow]);
  return null;
}
