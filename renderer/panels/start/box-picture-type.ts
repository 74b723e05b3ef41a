import type { ComponentType } from "react";
import type { EnclosureId } from "../../../shared-model/model/ids.ts";
import type { Project, StateName } from "../../../shared-model/model/project.ts";

/** Draws a box of a document that is not open; panes do not know the sheet, so the window hands it in. */
export type BoxPicture = ComponentType<{
  readonly project: Project;
  readonly state: StateName;
  readonly id: EnclosureId;
}>;
