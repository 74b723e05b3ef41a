import { catalogue, type Part } from "../../lib/catalogue.ts";
import type { Box } from "../../model/enclosure.ts";

const wording = catalogue({
  field: (field: Part, value: Part) => `${field} ${value}`,
  no: "no",
  none: "none",
  notRecorded: "not recorded",
  yes: "yes",
});

/** Parts of a box that a person fits or takes out, as they are called. What is not named here is a fact of the box. */
export const PART_WORDS: Readonly<Partial<Record<keyof Box, string>>> = catalogue({
  internalClamps: "internal clamps",
  supports: "supports inside",
  terminalBlocks: "terminal blocks",
  gangs: "gangs",
  cover: "cover",
  openKnockouts: "open knockouts",
  setbackIn: "setback from the surface",
  accessible: "access",
});

/** Facts of a device, a box or a panel. */
const FIELDS = new Map<string, string>(
  Object.entries(
    catalogue({
      acceptsStranded: "accepts stranded",
      behindAppliance: "behind appliance",
      bodyDepthIn: "body depth",
      breakerRatingA: "breaker rating",
      busRatingA: "bus rating",
      continuous: "continuous",
      depthIn: "depth",
      entryKind: "entry kind",
      exposure: "exposure",
      faceContact: "face contact",
      fanWeightLb: "fan weight lb",
      fastenedTo: "fastened to",
      framingBehind: "framing behind",
      function: "function",
      groupedInPanel: "grouped in panel",
      heldByBuilding: "held by building",
      hotTab: "hot tab",
      kind: "kind",
      leakMa: "leak",
      ledRatingW: "led rating",
      legs: "legs",
      listedBreakers: "listed breakers",
      listedFor: "listed for",
      listedForPanel: "listed for panel",
      loadOhm: "load",
      loadW: "load",
      luminaireWeightLb: "luminaire weight lb",
      mainBond: "main bond",
      markedForAluminium: "marked for aluminium",
      metalPlate: "metal plate",
      mountedOn: "mounted on",
      neutralTab: "neutral tab",
      openingMinIn: "opening min",
      priority: "priority",
      ratingA: "rating",
      ratingW: "rating",
      reachHeightIn: "reach height",
      reversal: "reversal",
      selfGrounding: "self grounding",
      sideSectionsRemoved: "side sections removed",
      slot: "slot",
      spaces: "spaces",
      supply: "supply",
      supplyC: "supply c",
      tamperResistant: "tamper resistant",
      tiedTo: "tied to",
      volume: "volume",
      wallCombustible: "wall combustible",
      wasSplit: "was split",
      weatherResistant: "weather resistant",
      weightLb: "weight lb",
    }),
  ),
);

/** What such a fact may be. */
const VALUES = new Map<string, string>(
  Object.entries(
    catalogue({
      afci: "afci",
      alarm: "alarm",
      blank: "blank",
      box: "box",
      ceiling: "ceiling",
      "clamp-plate": "clamp plate",
      cover: "cover",
      damp: "damp",
      deny: "deny",
      "deny-first": "deny first",
      device: "device",
      "device-plate": "device plate",
      dry: "dry",
      dual: "dual",
      elsewhere: "elsewhere",
      "equipment-ground-fault": "equipment ground fault",
      fan: "fan",
      feeder: "feeder",
      "fire-alarm-system": "fire alarm system",
      floor: "floor",
      freezer: "freezer",
      gfci: "gfci",
      here: "here",
      hickey: "hickey",
      "included-in-marked-volume": "included in marked volume",
      intact: "intact",
      legacy: "legacy",
      luminaire: "luminaire",
      medical: "medical",
      none: "none",
      nothing: "nothing",
      panel: "panel",
      present: "present",
      "push-in": "push in",
      removed: "removed",
      ring: "ring",
      separate: "separate",
      service: "service",
      "side-screw": "side screw",
      stud: "stud",
      "sump-pump": "sump pump",
      "tied-to-load": "tied to load",
      trips: "trips",
      unknown: "unknown",
      wall: "wall",
      "weatherproof-closed": "weatherproof closed",
      "weatherproof-in-use": "weatherproof in use",
      wet: "wet",
    }),
  ),
);

/** "hot tab", "breaker rating": a field as words; one that this version does not know by its key. */
export const fieldWords = (field: string): string =>
  FIELDS.get(field) ??
  field.replace(/(In3|In|Ft|A|W|Ma|Ohm)$/, "").replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);

/** "none", "present", "blank", 2: a value of a part. */
export function partValueWords(value: unknown): string {
  if (value === undefined) return wording.notRecorded;
  if (Array.isArray(value)) return value.length === 0 ? wording.none : value.map(itemWords).join(", ");
  if (typeof value === "boolean") return value ? wording.yes : wording.no;
  return VALUES.get(String(value)) ?? String(value).replaceAll("-", " ");
}

const itemWords = (item: unknown): string => VALUES.get(String(item)) ?? String(item);

/** "hot tab removed". */
export const fieldAndValue = (field: string, value: unknown): string =>
  wording.field(fieldWords(field), partValueWords(value));
