import { catalogue, type Part } from "../lib/catalogue.ts";

export const wording = catalogue({
  becomesTwo: (splice: Part) => `${splice} becomes two splices with one link`,
  gets: (splice: Part, connector: Part) => `${splice} gets “${connector}”`,
});
