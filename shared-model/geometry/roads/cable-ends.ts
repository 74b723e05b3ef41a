import { type CableId, type EnclosureId, otherSide, type Side } from "../../model/ids.ts";
import type { Installation, Point, Project } from "../../model/project.ts";
import type { Wall } from "../box-drawing.ts";
import { boxDrawing } from "../draw-box.ts";
import type { RoadEnd, RoadEnds } from "./road.ts";

/** Where a cable leaves a box that stands at a place of the sheet. */
export const roadEnd = (origin: Point, { x, y }: Point, wall: Wall): RoadEnd => ({
  at: { x: origin.x + x, y: origin.y + y },
  out: wall === "left" || wall === "top" ? -1 : 1,
  ...((wall === "top" || wall === "bottom") && { upright: true }),
});

/** The ends of one cable as they are drawn near, from side a to side b, with its bends; undefined where one is not drawn. */
export function cableEnds(project: Project, installation: Installation, id: CableId): RoadEnds | undefined {
  const cable = installation.cables[id];
  if (cable === undefined) return undefined;
  const endOf = (side: Side): RoadEnd | undefined => {
    const where = cable.sides[side];
    const far = cable.sides[otherSide(side)];
    const at = "enclosure" in where ? project.layout.enclosures[where.enclosure as EnclosureId] : undefined;
    if (!("enclosure" in where && "enclosure" in far) || at === undefined) return undefined;
    const { sheaths } = boxDrawing(project, installation, where.enclosure);
    const sheath = sheaths.find((each) => each.cable === id && each.side === side);
    return sheath && roadEnd(at, sheath.outer, sheath.wall);
  };
  const [a, b] = [endOf("a"), endOf("b")];
  const bends = project.layout.cables[id];
  return a && b && { a, b, ...(bends !== undefined && { bends }) };
}
