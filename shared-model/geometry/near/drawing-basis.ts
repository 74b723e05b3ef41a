import type { Enclosure } from "../../model/enclosure.ts";
import type { SpliceId } from "../../model/ids.ts";
import type { Installation, Project } from "../../model/project.ts";
import { planEntries } from "./entries.ts";
import { isFromPanel } from "./likely-sides.ts";
import { sheathCaption } from "./words.ts";

/**
 * Everything outside an enclosure that shows in its drawing, as values to compare: its cables with their walls in order,
 * what is wished of each and whether it comes from a panel, the words about their other ends, splices dragged by hand. A
 * box may move, and be edited at the other end of a cable, without a new layout here.
 */
export function drawingBasis(project: Project, installation: Installation, enclosure: Enclosure): readonly unknown[] {
  const basis: unknown[] = [];
  const protect = installation.intent.boxes[enclosure.id]?.protect;
  for (const entry of planEntries(project, installation, enclosure)) {
    const { title, note } = sheathCaption(installation, enclosure, entry);
    basis.push(entry.cable, entry.key, entry.wall, title, note, protect?.[entry.cable.id]);
    basis.push(isFromPanel(installation, entry.cable, entry.side));
  }
  for (const splice of Object.keys(enclosure.splices).sort()) {
    const point = project.layout.splices[splice as SpliceId];
    if (point !== undefined) basis.push(splice, point.x, point.y);
  }
  return basis;
}
