import { findDeviceType } from "../../catalog/device-types.ts";
import { catalogue, type Part } from "../../lib/catalogue.ts";
import { inSentence } from "../../lib/in-sentence.ts";
import type { Box } from "../../model/enclosure.ts";
import { fieldWords } from "../../queries/field-words.ts";
import { inchWords } from "../../units/inch-words.ts";

const wording = catalogue({
  amperes: (value: Part) => `${value} A`,
  celsius: (value: Part) => `${value} °C`,
  field: (field: Part, value: Part) => `${field} ${value}`,
  no: "no",
  none: "none",
  milliamperes: (value: Part) => `${value} mA`,
  notRecorded: "not recorded",
  ohms: (value: Part) => `${value} Ω`,
  pounds: (value: Part) => `${value} lb`,
  watts: (value: Part) => `${value} W`,
  yes: "yes",
});

/** Parts of a box that a person fits or takes out. What is not named here is a fact of the box. */
export const PARTS: ReadonlySet<string> = new Set<keyof Box>([
  "internalClamps",
  "supports",
  "terminalBlocks",
  "gangs",
  "cover",
  "openKnockouts",
  "setbackIn",
  "accessible",
]);

/** What such a fact may be. */
const VALUES = new Map<string, string>(
  Object.entries(
    catalogue({
      afci: "AFCI",
      alarm: "alarm",
      blank: "blank",
      box: "box",
      ceiling: "ceiling",
      "clamp-plate": "clamp plate",
      cover: "cover",
      damp: "damp",
      deny: "cannot be reset",
      "deny-first": "cannot be reset when first installed",
      device: "device",
      "device-plate": "device plate",
      dry: "dry",
      dual: "GFCI and AFCI",
      elsewhere: "elsewhere",
      "equipment-ground-fault": "ground-fault of equipment",
      fan: "fan",
      feeder: "feeder",
      "fire-alarm-system": "fire alarm system",
      floor: "floor",
      freezer: "freezer",
      gfci: "GFCI",
      here: "here",
      hickey: "hickey",
      "included-in-marked-volume": "counted in the marked volume",
      intact: "intact",
      legacy: "works reversed",
      luminaire: "luminaire",
      medical: "medical",
      none: "none",
      nothing: "nothing",
      panel: "panel",
      present: "present",
      "push-in": "push-in",
      removed: "removed",
      ring: "ring",
      separate: "separate",
      service: "service",
      "side-screw": "side screw",
      stud: "stud",
      "sump-pump": "sump pump",
      "tied-to-load": "tied to LOAD",
      trips: "trips",
      unknown: "unknown",
      wall: "wall",
      "weatherproof-closed": "weatherproof, closed",
      "weatherproof-in-use": "weatherproof, in use",
      wet: "wet",
    }),
  ),
);

/** Figures by the end of their field: "15 A", "2-1/8 in.". A field without such an end is a count. */
const FIGURES: readonly (readonly [end: RegExp, words: (value: number) => string])[] = [
  [/[a-z]In$/, inchWords],
  [/Lb$/, wording.pounds],
  [/Ma$/, wording.milliamperes],
  [/Ohm$/, wording.ohms],
  [/[a-z]W$/, wording.watts],
  [/[a-z]A$/, wording.amperes],
  [/[a-z]C$/, wording.celsius],
];

const figureWords = (field: string, value: number): string =>
  FIGURES.find(([end]) => end.test(field))?.[1](value) ?? String(value);

/** "none", "present", "blank", 2, "20 A": a value of a part. */
export function partValueWords(field: string, value: unknown): string {
  if (value === undefined) return wording.notRecorded;
  if (Array.isArray(value)) return value.length === 0 ? wording.none : value.map(itemWords).join(", ");
  if (typeof value === "boolean") return value ? wording.yes : wording.no;
  return typeof value === "number" ? figureWords(field, value) : itemWords(value);
}

/** What is of no list and of no stock is what a person wrote, or a letter. */
const itemWords = (item: unknown): string => VALUES.get(String(item)) ?? ofStock(String(item)) ?? String(item);

function ofStock(type: string): string | undefined {
  const title = findDeviceType(type)?.title;
  return title === undefined ? undefined : inSentence(title);
}

/** "hot tab removed". */
export const fieldAndValue = (field: string, value: unknown): string =>
  wording.field(fieldWords(field), partValueWords(field, value));
