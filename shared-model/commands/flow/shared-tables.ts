import type { Draft } from "immer";
import type { CableId, EnclosureId, SpliceId } from "../../model/ids.ts";
import type { Installation, Project } from "../../model/project.ts";
import { findSplice } from "../../queries/find-item.ts";
import { written } from "../move-ends.ts";

/** Things that a state no longer has; what is kept for them in tables that both states share may have to go. */
export interface Dropped {
  readonly enclosures: Iterable<EnclosureId>;
  readonly cables: Iterable<CableId>;
  readonly splices: Iterable<SpliceId>;
}

/**
 * Takes out of what both states share, positions on the sheet and pictures of boxes, what belongs to nothing that
 * `states` have. Looks at everything, or at `dropped` alone.
 */
export function dropUnshared(
  draft: Draft<Project>,
  { layout, attachments }: Project,
  states: readonly Installation[],
  dropped: Dropped = {
    enclosures: everyEnclosure(layout, attachments),
    cables: Object.keys(layout.cables) as CableId[],
    splices: Object.keys(layout.splices) as SpliceId[],
  },
): void {
  for (const id of dropped.enclosures) {
    if (states.some(({ enclosures }) => id in enclosures)) continue;
    if (id in layout.enclosures) delete draft.layout.enclosures[id];
    unpin(draft, layout, id);
    for (const attachment of Object.values(attachments))
      if (attachment.enclosure === id) delete written(draft.attachments[attachment.id]).enclosure;
  }
  for (const id of dropped.cables)
    if (id in layout.cables && !states.some(({ cables }) => id in cables)) delete draft.layout.cables[id];
  for (const id of dropped.splices)
    if (id in layout.splices && states.every((one) => findSplice(one, id) === undefined))
      delete draft.layout.splices[id];
}

/** Takes a box off those that stay where they are; the last of them takes the table along. */
export function unpin(draft: Draft<Project>, { pinned = {} }: Project["layout"], id: EnclosureId): void {
  const now = draft.layout.pinned;
  if (!(id in pinned) || now === undefined) return;
  delete now[id];
  if (Object.keys(now).length === 0) delete draft.layout.pinned;
}

const everyEnclosure = (layout: Project["layout"], attachments: Project["attachments"]): ReadonlySet<EnclosureId> =>
  new Set([
    ...(Object.keys({ ...layout.enclosures, ...layout.pinned }) as EnclosureId[]),
    ...Object.values(attachments).flatMap(({ enclosure }) => enclosure ?? []),
  ]);
