import { GROUND_CLAMPED_TO } from "../../model/cable.ts";
import { ROOM_KINDS } from "../../model/room.ts";
import { SYMBOL_SETS } from "../../model/symbol-set.ts";
import type { PropertyTarget } from "../command-args.ts";
import { deviceProperties } from "./device-properties.ts";
import { enclosureProperties } from "./enclosure-properties.ts";
import {
  asWritten,
  choice,
  choicesBy,
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
import { fieldWords } from "./property-words.ts";

export type { Choice, Property, PropertyKind } from "./property.ts";

/**
 * Every field that a person enters, by what carries it. Names, connections, intent and labels' places have commands of
 * their own. Ranges keep slips of the keyboard out; they are not limits of any rule.
 */
export const properties: Readonly<Record<PropertyTarget["kind"], readonly Property[]>> = {
  project: [
    must("title", text(200)),
    {
      ...must("supplySystem", { kind: "choice", choices: choicesBy(["120/240", "208Y/120"], asWritten) }),
      path: ["supply", "system"],
    },
    { ...may("supplyNominalV", number("V", 80, 160)), path: ["supply", "nominalV"] },
    may("statedLoadPercent", number("%", 1, 100)),
    may("branchDropPercent", number("%", 0.1, 50)),
    may("totalDropPercent", number("%", 0.1, 50)),
    may("symbols", choice(SYMBOL_SETS)),
    may("workDone", flag),
    must("notes", prose),
  ],
  room: [
    must("kinds", several(ROOM_KINDS)),
    may("grade", choice(["above", "at", "below"])),
    may("insulatedCavity", flag),
  ],
  enclosure: enclosureProperties,
  entry: [
    must("means", choice(["internal-clamp", "external-connector", "integral-clamp", "none"])),
    may("sheathInsideIn", number("in", 0, 24)),
    may("securedWithinIn", number("in", 0, 240)),
    may("markedForCables", count(1, 10)),
  ],
  ring: [
    must("kind", choice(["plaster-ring", "raised-cover", "extension"])),
    must("volume", { kind: "volume" }),
    { ...may("depthIn", number("in", 0, 12)), label: fieldWords.depthAdded },
  ],
  "pass-through": [may("loopLengthIn", number("in", 0, 1_200))],
  cable: [
    must(
      "construction",
      choice([
        "nonmetallic-sheathed",
        "armoured-bonded",
        "armoured-old",
        "knob-and-tube",
        "single-conductor",
        "raceway",
      ]),
    ),
    may("lengthFt", number("ft", 0, 10_000)),
    may("insulationC", number("°C", 40, 250)),
    may("route", text(200)),
    may("groundClampedTo", choice(GROUND_CLAMPED_TO)),
    may("pipeFromEntryFt", number("ft", 0, 1_000)),
    may("notes", prose),
  ],
  conductor: [
    { ...must("colour", colour), label: fieldWords.colourMade },
    must("awg", gauge),
    must("material", material),
    must("stranded", flag),
    must("grounding", flag),
  ],
  end: [
    may("freeLengthIn", number("in", 0, 120)),
    may("outsideOpeningIn", number("in", 0, 120)),
    may("condition", choice(["good", "nicked", "brittle", "burnt"])),
    may("markedAs", colour),
    may("jointOhm", number("Ω", 0, 1_000_000)),
    may("tag", text(80)),
  ],
  splice: [],
  jumper: [
    must("awg", gauge),
    must("colour", colour),
    must("material", material),
    must("stranded", flag),
    may("lengthIn", number("in", 0, 240)),
  ],
  device: deviceProperties,
  load: [
    may("loadW", number("W", 0, 50_000)),
    may("loadOhm", number("Ω", 0.1, 10_000_000)),
    may("leakMa", number("mA", 0, 1_000)),
    may("continuous", flag),
    may("priority", priority),
  ],
  label: [must("wording", text(200)), may("requiredBy", text(80))],
};
