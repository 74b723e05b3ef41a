import { useMemo } from "react";
import { WALL } from "../../../shared-model/geometry/metrics.ts";
import { USUAL_SET } from "../../../shared-model/model/symbol-set.ts";
import { documentStore } from "../../state/document-store.ts";
import { useStore } from "../../state/use-store.ts";
import { gestureStore } from "../gesture-store.ts";
import { FarLayer } from "./far-layer.tsx";
import type { RoadTraits } from "./far-paint-roads.ts";
import type { FarItem } from "./far-scene.ts";

const NONE: readonly never[] = [];
const never = (): boolean => false;
const PLAIN: RoadTraits = { isNew: never, isChosen: never, isGuarded: never };

/** Boxes on the move, in a layer of their own: the others are not painted again for each step of a drag. */
export function MovingBoxes({ all }: { readonly all: readonly FarItem[] }) {
  const moving = useStore(gestureStore, (gesture) => gesture.moving);
  const set = useStore(documentStore, ({ project }) => project.symbols ?? USUAL_SET);
  const items = useMemo(
    () =>
      all.flatMap((item): readonly FarItem[] => {
        const at = moving.get(item.id);
        return at === undefined ? [] : [{ ...item, rect: { ...item.rect, x: at.x - WALL, y: at.y - WALL } }];
      }),
    [all, moving],
  );
  return <FarLayer items={items} roads={NONE} rooms={NONE} traits={PLAIN} set={set} unit={1} />;
}
