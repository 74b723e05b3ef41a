import { catalogue } from "../../../shared-model/lib/catalogue.ts";

/** What is said while a box is made. */
export const laterWording = catalogue({
  makingTheBox: "Making the box…",
  itsPanelIsAskedFor: "The checks are asked for its panel, for some seconds at most.",
});
