import { catalogue } from "../lib/catalogue.ts";

const wording = catalogue({ none: "none (own check)" });

/** Stands for the section where a check of our own rests on no text of any edition. */
export const OWN_CHECK: string = wording.none;
