import { catalogue, type Part } from "../lib/catalogue.ts";

export const wording = catalogue({
  groundScrew: (of: Part) => `the ground screw of ${of}`,
  spliceWithPigtail: (ground: Part, name: Part) => `Splice ${ground} with the pigtail of ${name}`,
  land: (ground: Part, name: Part) => `Land ${ground} on ${name}`,
  joinPigtail: (name: Part, source: Part, connectors: Part) => `Join the pigtail of ${name} to ${source}${connectors}`,
  bringPigtail: (source: Part, name: Part, connectors: Part) =>
    `Bring a pigtail from ${source} to ${name}${connectors}`,
  spliceTogether: (ends: Part) => `Splice ${ends} together`,
  join: (groups: Part, to: Part, connectors: Part) => `Join ${groups} to ${to}${connectors}`,
  spliceGrounds: (box: Part) => `Splice the grounds on the ground screw of ${box} and bring one pigtail to it`,
  leaveOne: (box: Part, splice: Part, connectors: Part) =>
    `Leave one pigtail on the ground screw of ${box}, the others in ${splice}${connectors}`,
  and: " and ",
});
