import { GROUND_CLAMPED_TO } from "../../model/cable.ts";
import { ROOM_KINDS } from "../../model/room.ts";
import { SYMBOL_SETS } from "../../model/symbol-set.ts";
import type { PropertyTarget } from "../command-args.ts";
import { deviceProperties } from "./device-properties.ts";
import { enclosureProperties } from "./enclosure-properties.ts";
import {
  choice,
  colour,
  count,
  flag,
  gauge,
  material,
  may,
  must,
  number,
  type Property,
  priority,
  prose,
  several,
  text,
} from "./property.ts";

export type { Choice, Property, PropertyKind } from "./property.ts";

/**
 * Every field that a person enters, by what carries it. Names, connections, intent and labels' places have commands of
 * their own. Ranges keep slips of the keyboard out; they are not limits of any rule.
 */
export const properties: Readonly<Record<PropertyTarget["kind"], readonly Property[]>> = {
  project: [
    must("title", "Title", text(200)),
    { ...must("supplySystem", "System", choice(["120/240", "208Y/120"])), path: ["supply", "system"] },
    { ...may("supplyNominalV", "Volts to neutral", number("V", 80, 160)), path: ["supply", "nominalV"] },
    may("statedLoadPercent", "Voltage drop: load at an outlet, share of the breaker", number("%", 1, 100)),
    may("branchDropPercent", "Voltage drop: advice past, from the panel", number("%", 0.1, 50)),
    may("totalDropPercent", "Voltage drop: advice past, from the service", number("%", 0.1, 50)),
    may("symbols", "Drawing symbols", choice(SYMBOL_SETS, { us: "US", international: "International" })),
    may("workDone", "The proposed work is done", flag),
    must("notes", "Notes", prose),
  ],
  room: [
    must("kinds", "What it is", several(ROOM_KINDS)),
    may("grade", "Grade", choice(["above", "at", "below"])),
    may("insulatedCavity", "Insulated cavities", flag),
  ],
  enclosure: enclosureProperties,
  entry: [
    must("means", "Held by", choice(["internal-clamp", "external-connector", "integral-clamp", "none"])),
    may("sheathInsideIn", "Sheath inside the box", number("in", 0, 24)),
    may("securedWithinIn", "Secured within", number("in", 0, 240)),
    may("markedForCables", "Cables its clamp is marked for", count(1, 10)),
  ],
  ring: [
    must("kind", "Kind", choice(["plaster-ring", "raised-cover", "extension"])),
    must("volume", "Volume", { kind: "volume" }),
    may("depthIn", "Depth it adds", number("in", 0, 12)),
  ],
  "pass-through": [may("loopLengthIn", "Loop left inside", number("in", 0, 1_200))],
  cable: [
    must(
      "construction",
      "Construction",
      choice([
        "nonmetallic-sheathed",
        "armoured-bonded",
        "armoured-old",
        "knob-and-tube",
        "single-conductor",
        "raceway",
      ]),
    ),
    may("lengthFt", "Length", number("ft", 0, 10_000)),
    may("insulationC", "Insulation rated", number("°C", 40, 250)),
    may("route", "Route", text(200)),
    may("groundClampedTo", "Ground clamped outside to", choice(GROUND_CLAMPED_TO)),
    may("pipeFromEntryFt", "Clamp on the pipe, from its entry", number("ft", 0, 1_000)),
    may("notes", "Notes", prose),
  ],
  conductor: [
    must("colour", "Colour as made", colour),
    must("awg", "Size", gauge),
    must("material", "Material", material),
    must("stranded", "Stranded", flag),
    must("grounding", "Made as the ground", flag),
  ],
  end: [
    may("freeLengthIn", "Free length", number("in", 0, 120)),
    may("outsideOpeningIn", "Length outside the opening", number("in", 0, 120)),
    may("condition", "Condition", choice(["good", "nicked", "brittle", "burnt"])),
    may("markedAs", "Re-identified as", colour),
    may("jointOhm", "Resistance of the joint", number("Ω", 0, 1_000_000)),
    may("tag", "Tag", text(80)),
  ],
  splice: [],
  jumper: [
    must("awg", "Size", gauge),
    must("colour", "Colour", colour),
    must("material", "Material", material),
    must("stranded", "Stranded", flag),
    may("lengthIn", "Length", number("in", 0, 240)),
  ],
  device: deviceProperties,
  load: [
    may("loadW", "Load", number("W", 0, 50_000)),
    may("loadOhm", "Resistance", number("Ω", 0.1, 10_000_000)),
    may("leakMa", "Leak to ground", number("mA", 0, 1_000)),
    may("continuous", "Continuous load", flag),
    may("priority", "Must not go dark", priority),
  ],
  label: [must("wording", "Wording", text(200)), may("requiredBy", "Required by", text(80))],
};
