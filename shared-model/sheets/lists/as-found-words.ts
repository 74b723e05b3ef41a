import type { Role } from "../../answers/circuit.ts";
import { findConnector } from "../../catalog/connectors.ts";
import type { Enclosure } from "../../model/enclosure.ts";
import type { EndCondition } from "../../model/place.ts";
import type { Reading, ReadingInstrument } from "../../model/project.ts";

export const AS_FOUND = "As-found record";
export const HOW =
  "What is there before the work, with how each fact is known. A role is worked out from the connections that were recorded; a colour proves nothing.";
export const RECORDED = ["recorded by", "date", "signature"] as const;
export const CABLES = "Cables";
export const READINGS = "Readings";
export const PHOTOS = "Photos";
export const NOTES = "Notes";
export const NO_READINGS = "No reading was recorded.";
export const NO_PHOTOS = "No photo is attached.";
export const TABS_OFF = "tab off";
export const OUTSIDE = "outside the drawing";
export const COMPUTED = "computed, not measured";

export const ROLE_WORDS: Readonly<Record<Role, string>> = {
  ungrounded: "hot",
  switched: "switched hot",
  traveller: "traveller",
  grounded: "neutral",
  ground: "ground",
  signal: "signal",
  floating: "joined to no source",
  conflict: "CONFLICT",
};

export const CONDITIONS: Readonly<Record<EndCondition, string>> = {
  good: "good",
  nicked: "nicked",
  brittle: "brittle",
  burnt: "burnt",
};

export const INSTRUMENTS: Readonly<Record<ReadingInstrument, string>> = {
  meter: "meter",
  "low-impedance-meter": "low-impedance meter",
  "plug-in-tester": "plug-in tester",
  noncontact: "noncontact tester",
  continuity: "continuity tester",
  insulation: "insulation tester",
  "own-test": "TEST of the device",
  reset: "RESET of the device",
  "plug-in-button": "button of a plug-in tester",
  "clamp-meter": "clamp meter",
  "test-lamp": "test lamp",
  leak: "leak",
  "by-eye": "by eye",
};

/** "TEST of the device; 4711". */
export const instrumentWords = ({ instrument, instrumentId }: Reading): string =>
  [INSTRUMENTS[instrument], instrumentId].filter(Boolean).join("; ");

export const connectorWords = (connector: string): string => {
  const found = findConnector(connector);
  if (found !== undefined) return found.title;
  return connector === "none" ? "no connector" : connector === "unknown" ? "connector not known" : connector;
};

export const BOND_WORDS: Readonly<Record<Enclosure["kind"], string>> = { box: "box bond", panel: "panel bond" };

export const CLAMP_WORDS = {
  none: "no internal clamps",
  present: "internal clamps present",
  "included-in-marked-volume": "clamps counted in the marked volume",
  unknown: "internal clamps not known",
} as const;
