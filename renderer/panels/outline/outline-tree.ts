import { findEnclosureItem } from "../../../shared-model/catalog/enclosure-items.ts";
import type { Enclosure } from "../../../shared-model/model/enclosure.ts";
import type { Installation, Project, Reading } from "../../../shared-model/model/project.ts";
import type { Room } from "../../../shared-model/model/room.ts";
import { cablesInto } from "../../../shared-model/queries/cables-into.ts";
import { inOrder } from "../../../shared-model/queries/in-order.ts";
import { farSideName } from "../../state/far-side-name.ts";
import { INSTRUMENT_WORDS } from "../../state/item-actions/reading-action.ts";
import { insideOf } from "./enclosure-nodes.ts";
import { branch, leaf, type OutlineNode } from "./outline-node.ts";
import { wording } from "./words.ts";

/** The outline of one account of the wiring: panels and boxes in their order, then rooms and readings where there are any. */
export function outlineOf(
  project: Pick<Project, "rooms" | "readings">,
  installation: Installation,
): readonly OutlineNode[] {
  const rooms = inOrder<Room>(project.rooms).map((room) => roomNode(installation, room));
  const readings = inOrder<Reading>(project.readings).map(readingNode);
  return [
    ...inOrder<Enclosure>(installation.enclosures).map((enclosure) => enclosureNode(project, installation, enclosure)),
    ...(rooms.length === 0
      ? []
      : [
          branch(
            { ...GROUP, key: ROOMS, subject: { kind: "rooms" }, name: wording.rooms, note: countOf(rooms) },
            rooms,
          ),
        ]),
    ...(readings.length === 0
      ? []
      : [
          branch(
            {
              ...GROUP,
              key: "readings",
              subject: { kind: "readings" },
              name: wording.readings,
              note: countOf(readings),
            },
            readings,
          ),
        ]),
  ];
}

/** Key of the group of rooms. */
export const ROOMS = "rooms";

const GROUP = { kind: "group" } as const;
const countOf = (list: readonly unknown[]): string => String(list.length);

interface Kept {
  readonly inputs: readonly unknown[];
  readonly children: readonly OutlineNode[];
}

const cache = new WeakMap<Enclosure, Kept>();

/** In a house of a thousand boxes an edit changes one or two: what is in the others is kept. */
function childrenOf(installation: Installation, enclosure: Enclosure): readonly OutlineNode[] {
  const entered = cablesInto(installation.cables, enclosure.id);
  const inputs = [
    installation.loads,
    installation.labels,
    ...entered.flatMap(({ cable, side }) => [cable, side, farSideName(installation, cable, side)]),
    ...Object.values(enclosure.passThroughs).map(({ cable }) => installation.cables[cable]?.name),
  ];
  const kept = cache.get(enclosure);
  const isSame = kept?.inputs.length === inputs.length && kept.inputs.every((input, at) => input === inputs[at]);
  if (kept !== undefined && isSame) return kept.children;
  const children = insideOf(installation, enclosure, enclosure.id);
  cache.set(enclosure, { inputs, children });
  return children;
}

function enclosureNode(project: Pick<Project, "rooms">, installation: Installation, enclosure: Enclosure): OutlineNode {
  const { id, name, note, kind, roomId } = enclosure;
  const room = roomId === undefined ? undefined : project.rooms[roomId]?.name;
  return {
    key: id,
    subject: { kind: "enclosure", id },
    name,
    kind,
    note: [note, room?.toLowerCase() === note?.toLowerCase() ? undefined : room].filter(Boolean).join(", "),
    glyph: findEnclosureItem(enclosure.item)?.glyph ?? "box",
    // The bond is always there.
    hasChildren: true,
    children: () => childrenOf(installation, enclosure),
  };
}

function roomNode(installation: Installation, { id, name, kinds }: Room): OutlineNode {
  const boxes = Object.values(installation.enclosures).filter(({ roomId }) => roomId === id).length;
  return leaf({
    key: `${ROOMS}/${id}`,
    subject: { kind: "room", id },
    name,
    kind: "room",
    note: wording.inIt(kinds.length === 0 ? "no kind said" : kinds.join(", ").replaceAll("-", " "), boxes),
  });
}

const readingNode = ({ id, instrument, value, unit, takenAt, computed }: Reading): OutlineNode =>
  leaf({
    key: `readings/${id}`,
    subject: { kind: "reading", id },
    name: unit === undefined ? value : `${value} ${unit}`,
    kind: "reading",
    note: `${INSTRUMENT_WORDS[instrument].toLowerCase()}${takenAt === undefined ? "" : `, ${takenAt.slice(0, 10)}`}${computed ? wording.computedCircuit : ""}`,
    glyph: "meter",
  });
