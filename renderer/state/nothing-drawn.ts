import type { Project } from "../../shared-model/model/project.ts";

/** Whether no account of the wiring holds a box or a panel yet. */
export const nothingDrawn = ({ asFound, proposed }: Project): boolean =>
  [asFound, proposed].every((each) => Object.keys(each?.enclosures ?? {}).length === 0);
