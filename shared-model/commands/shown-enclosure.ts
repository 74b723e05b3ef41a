import type { Enclosure } from "../model/enclosure.ts";
import type { EnclosureId } from "../model/ids.ts";
import type { Project } from "../model/project.ts";

/** An enclosure that some state has, as found first. */
export const shownEnclosure = ({ asFound, proposed }: Project, id: EnclosureId): Enclosure | undefined =>
  asFound.enclosures[id] ?? proposed?.enclosures[id];
