import { callTarget } from "../../shared-model/commands/property-target.ts";
import type { DocumentState } from "./document-store.ts";
import type { Selected } from "./selection.ts";

/** What a person calls something that is selected: "B1", "C1 BK", "the entry of B1". */
export const nameOfSelected = ({ project, state }: DocumentState, item: Selected): string =>
  callTarget(project, state, item);
