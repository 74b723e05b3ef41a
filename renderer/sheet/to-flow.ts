import type { Node } from "@xyflow/react";
import type { BoxDrawing } from "../../shared-model/geometry/box-drawing.ts";
import type { Enclosure } from "../../shared-model/model/enclosure.ts";
import type { EnclosureId } from "../../shared-model/model/ids.ts";
import type { Point } from "../../shared-model/model/project.ts";
import type { EnclosureChange } from "../../shared-model/queries/changed-between-states.ts";
import { installationOf } from "../state/document-store.ts";
import { placesOf } from "../state/sheet-places.ts";
import { frameOf, magnification, type View } from "./box-frame.ts";
import { CHANGE_WORDS, shownDifference } from "./difference.ts";
import type { SheetDrawings } from "./sheet-drawings.ts";
import { wording } from "./words.ts";

/** A box on the sheet. Everything but its id is read by the node itself, so that an edit renders that node alone. */
export type BoxFlowNode = Node<{ readonly enclosure: EnclosureId }, "box">;

interface Made {
  readonly enclosure: Enclosure;
  readonly bounds: object;
  readonly x: number;
  readonly y: number;
  readonly scale: number;
  readonly selected: boolean;
  /** 0: among the others. */
  readonly height: number;
  readonly change: EnclosureChange | undefined;
  readonly node: BoxFlowNode;
}

/** Boxes that are opened, and from where they are seen. */
export interface Opened {
  readonly ids: readonly EnclosureId[];
  readonly view: View;
}

const NONE_OPEN: Opened = { ids: [], view: { zoom: 1, width: 0, height: 0 } };
const ORIGIN = { x: 0, y: 0 };

/** What lies over what: a selected box over the others, opened ones over it, the one with the hand in it on top. */
const SELECTED = 10;
const OPEN = 20;
const TOP = 10_000;

/** The sheet is one stop of the Tab key: from there the arrow keys go to its boxes. */
const ATTRIBUTES = { "aria-roledescription": "box", tabIndex: -1 } as const;

interface Shown {
  readonly shown: SheetDrawings;
  readonly selected: ReadonlySet<string>;
  readonly raised: EnclosureId | undefined;
  readonly open: Opened;
}

interface Laid extends Shown {
  readonly moving: ReadonlyMap<EnclosureId, Point>;
  readonly nodes: BoxFlowNode[];
  readonly indexOf: ReadonlyMap<EnclosureId, number>;
}

/**
 * Turns the layout into flow nodes. The same box at the same place gives the same node object, which is what keeps a
 * drag or an edit from touching the other nodes; a step of a drag looks at the boxes on the move alone.
 */
export function createToFlow() {
  let made = new Map<EnclosureId, Made>();
  let laid: Laid | undefined;
  const nodeOf = (what: Shown, enclosure: Enclosure, drawing: BoxDrawing, origin: Point): BoxFlowNode => {
    const wanted = wantedOf(what, enclosure, drawing, origin);
    const before = made.get(enclosure.id);
    if (before !== undefined && isSame(before, wanted)) return before.node;
    const entry = { ...wanted, node: makeNode(wanted, frameOf(drawing, wanted.scale)) };
    made.set(enclosure.id, entry);
    return entry.node;
  };
  const layAll = (what: Shown, moving: Laid["moving"]): Laid => {
    const { document, drawings } = what.shown;
    const places = placesOf(document);
    const { enclosures } = installationOf(document);
    const nodes: BoxFlowNode[] = [];
    const indexOf = new Map<EnclosureId, number>();
    for (const enclosure of Object.values(enclosures)) {
      const drawing = drawings.get(enclosure.id);
      if (drawing === undefined) continue;
      indexOf.set(enclosure.id, nodes.length);
      nodes.push(nodeOf(what, enclosure, drawing, moving.get(enclosure.id) ?? places[enclosure.id] ?? ORIGIN));
    }
    made = new Map([...made].filter(([id]) => indexOf.has(id)));
    return { ...what, moving, nodes, indexOf };
  };
  const layMoving = (before: Laid, moving: Laid["moving"]): Laid => {
    const { document, drawings } = before.shown;
    const { enclosures } = installationOf(document);
    const places = placesOf(document);
    const nodes = [...before.nodes];
    for (const id of new Set([...before.moving.keys(), ...moving.keys()])) {
      const index = before.indexOf.get(id);
      const enclosure = enclosures[id];
      const drawing = drawings.get(id);
      if (index === undefined || enclosure === undefined || drawing === undefined) continue;
      nodes[index] = nodeOf(before, enclosure, drawing, moving.get(id) ?? places[id] ?? ORIGIN);
    }
    return { ...before, moving, nodes };
  };
  return function toFlow(
    shown: SheetDrawings,
    moving: ReadonlyMap<EnclosureId, Point>,
    selected: ReadonlySet<string>,
    raised: EnclosureId | undefined,
    open: Opened = NONE_OPEN,
  ): BoxFlowNode[] {
    const isStep = laid?.shown === shown && laid.selected === selected && laid.raised === raised && laid.open === open;
    laid = isStep && laid !== undefined ? layMoving(laid, moving) : layAll({ shown, selected, raised, open }, moving);
    return laid.nodes;
  };
}

function wantedOf(
  { shown, selected, raised, open }: Shown,
  enclosure: Enclosure,
  drawing: BoxDrawing,
  origin: Point,
): Omit<Made, "node"> {
  const opened = open.ids.indexOf(enclosure.id);
  const scale = opened < 0 ? 1 : magnification(drawing, open.view);
  const frame = opened < 0 ? drawing.bounds : frameOf(drawing, scale);
  const isSelected = selected.has(enclosure.id);
  return {
    enclosure,
    bounds: drawing.bounds,
    x: origin.x + frame.x,
    y: origin.y + frame.y,
    scale,
    selected: isSelected,
    height: raised === enclosure.id ? TOP : opened >= 0 ? OPEN + opened : isSelected ? SELECTED : 0,
    change: shownDifference(shown.document)?.enclosures.get(enclosure.id),
  };
}

const isSame = (a: Omit<Made, "node">, b: Omit<Made, "node">): boolean =>
  a.enclosure.name === b.enclosure.name &&
  a.enclosure.note === b.enclosure.note &&
  a.bounds === b.bounds &&
  a.x === b.x &&
  a.y === b.y &&
  a.scale === b.scale &&
  a.selected === b.selected &&
  a.height === b.height &&
  a.change === b.change;

function makeNode(
  { enclosure, x, y, selected, height: zIndex, change }: Omit<Made, "node">,
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
    zIndex,
    ariaRole: "group",
    ariaLabel: boxWords(enclosure, change),
    domAttributes: { ...ATTRIBUTES, "aria-labelledby": wordsId(enclosure.id) },
  };
}

/** Id of the element that holds the full name of a box, which changes with the findings while the node stays. */
export const wordsId = (id: EnclosureId): string => `sheet-words-${id}`;

/** "Box B1, laundry"; in proposed also "opened" or "new". */
export function boxWords({ kind, name, note }: Enclosure, change?: EnclosureChange): string {
  const parts = [`${kind === "panel" ? wording.panel : wording.box} ${name}`, note, change && CHANGE_WORDS[change]];
  return parts.filter((part) => part !== undefined && part !== "").join(", ");
}
