import { catalogue } from "../../words/catalogue.ts";

/** What is said in this folder. */
export const wording = catalogue({
  theCableStaysAsItWas: "The cable stays as it was",
});
