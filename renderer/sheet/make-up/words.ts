import { catalogue, type Part } from "../../../shared-model/lib/catalogue.ts";

/** What is said in this folder. */
export const wording = catalogue({
  asItWouldBe: (name: Part) => `${name} as it would be: what moves, what comes and what is taken out`,
  preview: "PREVIEW OF THE MAKE-UP",
});
