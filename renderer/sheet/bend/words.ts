import { catalogue } from "../../../shared-model/lib/catalogue.ts";

/** What is said in this folder. */
export const wording = catalogue({
  theCableStaysAsItWas: "The cable stays as it was",
});
