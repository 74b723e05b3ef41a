import type { Node } from "@xyflow/react";
import type { Enclosure } from "../../shared-model/model/enclosure.ts";
import type { EnclosureId } from "../../shared-model/model/ids.ts";
import type { Point } from "../../shared-model/model/project.ts";
import type { EnclosureChange } from "../../shared-model/queries/changed-between-states.ts";
import { installationOf } from "../state/document-store.ts";
import { CHANGE_WORDS, shownDifference } from "./difference.ts";
import { placesOf } from "./places.ts";
import type { SheetDrawings } from "./sheet-drawings.ts";

/** A box on the sheet. Everything but its id is read by the node itself, so that an edit renders that node alone. */
export type BoxFlowNode = Node<{ readonly enclosure: EnclosureId }, "box">;

interface Made {
  readonly enclosure: Enclosure;
  readonly bounds: object;
  readonly x: number;
  readonly y: number;
  readonly selected: boolean;
  readonly raised: boolean;
  readonly change: EnclosureChange | undefined;
  readonly node: BoxFlowNode;
}

/** Words of the node in the accessibility tree; a constant, so that nodes stay equal. */
const ATTRIBUTES = { "aria-roledescription": "box", tabIndex: 0 } as const;

/**
 * Turns the layout into flow nodes. The same box at the same place gives the same node object, which is what keeps a
 * drag or an edit from touching the other nodes.
 */
export function createToFlow() {
  let made = new Map<EnclosureId, Made>();
  return function toFlow(
    { document, drawings }: SheetDrawings,
    moving: ReadonlyMap<EnclosureId, Point>,
    selected: ReadonlySet<string>,
    raised: EnclosureId | undefined,
  ): BoxFlowNode[] {
    const next = new Map<EnclosureId, Made>();
    const nodes: BoxFlowNode[] = [];
    const places = placesOf(document);
    const changes = shownDifference(document);
    for (const enclosure of Object.values(installationOf(document).enclosures)) {
      const drawing = drawings.get(enclosure.id);
      if (drawing === undefined) continue;
      const origin = moving.get(enclosure.id) ?? places[enclosure.id] ?? { x: 0, y: 0 };
      const wanted = {
        enclosure,
        bounds: drawing.bounds,
        x: origin.x + drawing.bounds.x,
        y: origin.y + drawing.bounds.y,
        selected: selected.has(enclosure.id),
        raised: raised === enclosure.id,
        change: changes?.enclosures.get(enclosure.id),
      };
      const before = made.get(enclosure.id);
      const entry =
        before !== undefined && isSame(before, wanted) ? before : { ...wanted, node: makeNode(wanted, drawing.bounds) };
      next.set(enclosure.id, entry);
      nodes.push(entry.node);
    }
    made = next;
    return nodes;
  };
}

const isSame = (a: Omit<Made, "node">, b: Omit<Made, "node">): boolean =>
  a.enclosure.name === b.enclosure.name &&
  a.enclosure.note === b.enclosure.note &&
  a.bounds === b.bounds &&
  a.x === b.x &&
  a.y === b.y &&
  a.selected === b.selected &&
  a.raised === b.raised &&
  a.change === b.change;

function makeNode(
  { enclosure, x, y, selected, raised, change }: Omit<Made, "node">,
  { width, height }: { readonly width: number; readonly height: number },
): BoxFlowNode {
  return {
    id: enclosure.id,
    type: "box",
    position: { x, y },
    data: { enclosure: enclosure.id },
    width,
    height,
    measured: { width, height },
    handles: [],
    selected,
    zIndex: raised ? 20 : selected ? 10 : 0,
    ariaRole: "group",
    ariaLabel: boxWords(enclosure, change),
    domAttributes: ATTRIBUTES,
  };
}

/** "Box B1, laundry"; in proposed also "opened" or "new". */
export function boxWords({ kind, name, note }: Enclosure, change?: EnclosureChange): string {
  const parts = [`${kind === "panel" ? "Panel" : "Box"} ${name}`, note, change && CHANGE_WORDS[change]];
  return parts.filter((part) => part !== undefined && part !== "").join(", ");
}
