import type { Draft } from "immer";
import { catalogue, type Part } from "../lib/catalogue.ts";
import type { CableId, EnclosureId } from "../model/ids.ts";
import type { Point, Project } from "../model/project.ts";
import { idText, listOf, record, sheetPoint } from "./args-shape.ts";
import type { CommandArgs } from "./command-args.ts";
import { defineCommand, refusal } from "./define-command.ts";
import { gone, unnamed } from "./item-words.ts";

type Args = CommandArgs["move-enclosures"];

const wording = catalogue({
  move: (boxes: Part) => `Move ${boxes}`,
});

/** Moves boxes and panels on the sheet, where both states stand. It changes nothing about the wiring. */
export const moveEnclosures = defineCommand<Args>({
  id: "move-enclosures",
  args: record<Args>({ moves: listOf(record({ id: idText, to: sheetPoint }), 1) }),
  label(project, { moves }) {
    const [first] = moves;
    if (first === undefined || moves.length > 1) return wording.move(unnamed.boxes(moves.length));
    const name = (project.asFound.enclosures[first.id] ?? project.proposed?.enclosures[first.id])?.name;
    return wording.move(name ?? unnamed.box);
  },
  refuse(project, { moves }) {
    const known = moves.every(
      ({ id }) => id in project.asFound.enclosures || id in (project.proposed?.enclosures ?? {}),
    );
    if (known) return undefined;
    return refusal("unknown-item", gone.boxes);
  },
  apply(draft, { moves }, before) {
    for (const { id, to } of moves) {
      const was = before.layout.enclosures[id];
      if (was?.x !== to.x || was.y !== to.y) draft.layout.enclosures[id] = { ...to };
    }
    takeBendsAlong(draft, moves, before);
  },
  mergeKey: ({ moves }) => moves.map(({ id }) => id).join(" "),
});

/** The bends of a cable go along where both of its boxes went the same way: then it looks as before. */
function takeBendsAlong(draft: Draft<Project>, moves: Args["moves"], { layout, asFound, proposed }: Project): void {
  const by = new Map<EnclosureId, Point>();
  for (const { id, to } of moves) {
    const was = layout.enclosures[id];
    if (was !== undefined) by.set(id, { x: to.x - was.x, y: to.y - was.y });
  }
  for (const id of Object.keys(layout.cables) as CableId[]) {
    const sides = (asFound.cables[id] ?? proposed?.cables[id])?.sides;
    if (sides === undefined || !("enclosure" in sides.a && "enclosure" in sides.b)) continue;
    const [one, other] = [by.get(sides.a.enclosure), by.get(sides.b.enclosure)];
    if (one === undefined || one.x !== other?.x || one.y !== other.y || (one.x === 0 && one.y === 0)) continue;
    draft.layout.cables[id] = (layout.cables[id] ?? []).map(({ x, y }) => ({ x: x + one.x, y: y + one.y }));
  }
}
