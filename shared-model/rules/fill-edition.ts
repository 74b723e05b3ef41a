import type { Project } from "../model/project.ts";
import { amendedEdition } from "./amendments.ts";
import { boxOverfull } from "./checks/box-overfull.ts";
import type { EditionData } from "./editions/edition-data.ts";
import { getEdition } from "./editions/editions.ts";

/** The edition by which the box-fill ledger of a document counts: that of the rule that judges it, amendments included. */
export const fillEdition = ({ edition, amendments }: Project): EditionData =>
  amendedEdition(getEdition(edition), boxOverfull, amendments);
