import { catalogue, type Part } from "../../../shared-model/lib/catalogue.ts";

/** What is said in this folder. */
export const wording = catalogue({
  groundScrew: "ground screw",
  green: "green",
  line: "LINE",
  load: "LOAD",
  off: "OFF",
  on: "ON",
  replaces: (replaced: Part) => `replaces ${replaced}`,
  reset: "RESET",
  test: "TEST",
});
