import { catalogue } from "../../lib/catalogue.ts";

/** What is known of a device, by its field. */
const FIELDS: Readonly<Record<string, string>> = catalogue({
  name: "name",
  type: "type",
  replaces: "replaces",
  zones: "zones",
  hotTab: "hot tab",
  neutralTab: "neutral tab",
  entryKind: "entry kind",
  ratingA: "rating",
  tamperResistant: "tamper resistant",
  weatherResistant: "weather resistant",
  markedForAluminium: "marked for aluminium",
  acceptsStranded: "accepts stranded",
  selfGrounding: "self grounding",
  bodyDepthIn: "body depth",
  reachHeightIn: "reach height",
  behindAppliance: "behind appliance",
  metalPlate: "metal plate",
  fastenedTo: "fastened to",
  wasSplit: "was split",
  ratingW: "rating",
  ledRatingW: "led rating",
  sideSectionsRemoved: "side sections removed",
  reversal: "reversal",
  faceContact: "face contact",
  slot: "slot",
  breakerRatingA: "breaker rating",
  legs: "legs",
  function: "function",
  tiedTo: "tied to",
  listedForPanel: "listed for panel",
  groupedInPanel: "grouped in panel",
  loadW: "load",
  loadOhm: "load",
  leakMa: "leak",
  continuous: "continuous",
  priority: "priority",
  weightLb: "weight",
  heldByBuilding: "held by building",
  supplyC: "supply",
  notes: "notes",
});

/** A field as a person calls it; one that has no words here as the document calls it: "freeLengthIn" as "free length". */
export const fieldWords = (field: string): string => FIELDS[field] ?? apart(field);

const apart = (field: string): string =>
  field
    .replace(/(In|Ft|In3|A|W|C|Lb|Ohm|Ma)$/, "")
    .replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`)
    .trim();
