import type { Role } from "../../answers/circuit.ts";
import { findConnector } from "../../catalog/connectors.ts";
import { catalogue, type Part } from "../../lib/catalogue.ts";
import { inSentence } from "../../lib/in-sentence.ts";
import type { Box, Enclosure } from "../../model/enclosure.ts";
import type { At, EndCondition } from "../../model/place.ts";
import type { Reading, ReadingInstrument } from "../../model/project.ts";

export const AS_FOUND = catalogue({
  title: "As-found record",
  how: "What is there before the work, with how each fact is known. A role is worked out from the connections that were recorded; a colour proves nothing.",
  recordedBy: "recorded by",
  date: "date",
  signature: "signature",
  cables: "Cables",
  readings: "Readings",
  photos: "Photos",
  notes: "Notes",
  noReadings: "No reading was recorded.",
  noPhotos: "No photo is attached.",
  tabOff: "tab off",
  computed: "computed, not measured",
  free: (length: Part) => `${length} free`,
  outsideOpening: (length: Part) => `${length} outside the opening`,
  spare: "spare",
  jointOf: (ohm: Part) => `joint of ${ohm} ohm`,
  tag: (words: Part) => `tag “${words}”`,
  devicesAre: (devices: Part) => `Devices: ${devices}.`,
  jointsAre: (joints: Part) => `Joints: ${joints}.`,
  photosAre: (photos: Part) => `Photos: ${photos}.`,
  joint: (name: Part, count: Part, connector: Part) => `${name} ${count} ends, ${connector}`,
  cableOf: (kind: Part, count: Part) => `${kind}, ${count} wires`,
  fromTo: (from: Part, to: Part) => `${from} to ${to}`,
  feet: (length: Part) => `${length} ft`,
});

/** Lines to sign on. */
export const RECORDED = [AS_FOUND.recordedBy, AS_FOUND.date, AS_FOUND.signature] as const;

/** Over the columns of the sheet. */
export const AS_FOUND_HEADS = catalogue({
  end: "end",
  awg: "AWG",
  place: "place",
  known: "known",
  role: "role",
  more: "more",
  cable: "cable",
  kind: "kind",
  fromTo: "from, to",
  length: "length",
  insulation: "insulation",
  notes: "notes",
  at: "at",
  what: "what",
  value: "value",
  instrument: "instrument",
  date: "date",
  by: "by",
  photo: "photo",
  of: "of",
  shows: "shows",
});

export const ROLE_WORDS: Readonly<Record<Role, string>> = catalogue({
  ungrounded: "hot",
  switched: "switched hot",
  traveller: "traveller",
  grounded: "neutral",
  ground: "ground",
  signal: "signal",
  floating: "joined to no source",
  conflict: "CONFLICT",
});

export const CONDITIONS: Readonly<Record<EndCondition, string>> = catalogue({
  good: "good",
  nicked: "nicked",
  brittle: "brittle",
  burnt: "burnt",
});

const INSTRUMENTS: Readonly<Record<ReadingInstrument, string>> = catalogue({
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
});

/** "TEST of the device; 4711". */
export const instrumentWords = ({ instrument, instrumentId }: Reading): string =>
  [INSTRUMENTS[instrument], instrumentId].filter(Boolean).join("; ");

const WITHOUT_CONNECTOR: Readonly<Record<string, string>> = catalogue({
  none: "no connector",
  taped: "taped",
  soldered: "soldered",
  unknown: "connector not known",
});

/** A connector in the middle of a sentence. */
export const connectorWords = (connector: string): string =>
  inSentence(findConnector(connector)?.title ?? WITHOUT_CONNECTOR[connector] ?? connector);

export const BOND_WORDS: Readonly<Record<Enclosure["kind"], string>> = catalogue({
  box: "box ground screw",
  panel: "panel bond",
});

/** Where an end is that is joined to nothing. */
export const END_ALONE: Readonly<Record<Extract<At["kind"], "capped" | "loose">, string>> = catalogue({
  capped: "capped",
  loose: "loose",
});

/** As a sentence of its own, without its stop. */
export const CLAMP_WORDS: Readonly<Record<Box["internalClamps"], string>> = catalogue({
  none: "No internal clamps",
  present: "Internal clamps present",
  "included-in-marked-volume": "Clamps counted in the marked volume",
  unknown: "Internal clamps not known",
});

/** Of the lists for writers of tables. */
export const AS_FOUND_TABLES = catalogue({
  ends: "Ends",
  cables: "Cables",
  readings: "Readings",
  photos: "Photos",
  box: "Box",
  end: "End",
  awg: "AWG",
  place: "Place",
  known: "Known",
  role: "Role",
  more: "More",
  cable: "Cable",
  kind: "Kind",
  from: "From",
  to: "To",
  length: "Length, ft",
  lengthKnown: "Length known",
  insulation: "Insulation, °C",
  at: "At",
  test: "Test",
  value: "Value",
  unit: "Unit",
  instrument: "Instrument",
  date: "Date",
  by: "By",
  remark: "Remark",
  photo: "Photo",
  shows: "Shows",
});
