import { ROOM_KINDS } from "../../model/room.ts";
import { choice, count, flag, may, number, type Property, priority, prose, several, type Where } from "./property.ts";

const BREAKER: Where = { traits: ["breaker"] };
const USER: Where = { traits: ["user"] };

/** Fields of devices, each where it means something. */
export const deviceProperties: readonly Property[] = [
  may("zones", "Zones it stands in", several(ROOM_KINDS), { traits: ["in-box"] }),
  may("hotTab", "Hot tab", choice(["intact", "removed"]), { traits: ["hot-tab"] }),
  may("neutralTab", "Neutral tab", choice(["intact", "removed"]), { traits: ["neutral-tab"] }),
  may("entryKind", "Conductors held by", choice(["side-screw", "clamp-plate", "push-in"]), {
    traits: ["entry-choice"],
  }),
  may("ratingA", "Rating", number("A", 1, 100), { traits: ["yoke"] }),
  may("tamperResistant", "Tamper-resistant", flag, { traits: ["receptacle"] }),
  may("weatherResistant", "Weather-resistant", flag, { traits: ["receptacle"] }),
  may("markedForAluminium", "Marked for aluminium (CO/ALR)", flag, { traits: ["in-box"] }),
  may("acceptsStranded", "Accepts stranded conductors", flag),
  may("selfGrounding", "Self-grounding", flag, { traits: ["yoke"] }),
  may("bodyDepthIn", "Depth of its body", number("in", 0.1, 12), { traits: ["yoke"] }),
  may("reachHeightIn", "Height above the floor", number("in", 0, 240), { traits: ["in-box"] }),
  may("behindAppliance", "Behind an appliance", flag, { traits: ["in-box"] }),
  may("metalPlate", "Metal plate", flag, { traits: ["yoke"] }),
  may("fastenedTo", "Screwed to", choice(["box", "ring", "cover", "nothing"]), { traits: ["yoke"] }),
  may("wasSplit", "Halves were once separate", flag, { traits: ["receptacle"] }),
  may("ratingW", "Rated load as it is mounted", number("W", 0, 10_000), { traits: ["dimmer"] }),
  may("ledRatingW", "Rated LED load", number("W", 0, 10_000), { traits: ["dimmer"] }),
  may("sideSectionsRemoved", "Side sections taken off", count(0, 10), { traits: ["dimmer"] }),
  may(
    "reversal",
    "With its supply on LOAD",
    choice(["deny", "deny-first", "trips", "legacy"], {
      deny: "Cannot be reset (made from mid-2015)",
      "deny-first": "Cannot be reset when first installed (mid-2006 on)",
      trips: "Trips (2003 to mid-2006)",
      legacy: "Works reversed (before 2003)",
    }),
    { traits: ["line-load"] },
  ),
  may("faceContact", "Face when tripped", choice(["separate", "tied-to-load"]), { traits: ["line-load"] }),
  may("slot", "Space", count(1, 84), BREAKER),
  may("breakerRatingA", "Rating", number("A", 1, 1_200), BREAKER),
  may("legs", "Legs", several(["A", "B", "C"]), BREAKER),
  may(
    "function",
    "Function",
    choice(["none", "gfci", "afci", "dual", "equipment-ground-fault"], {
      none: "Overcurrent only",
      gfci: "Ground-fault (GFCI)",
      afci: "Arc-fault (AFCI)",
      dual: "Ground-fault and arc-fault",
      "equipment-ground-fault": "Ground-fault of equipment",
    }),
    BREAKER,
  ),
  may("tiedTo", "Handle tied to", { kind: "breaker" }, BREAKER),
  may("listedForPanel", "Listed for this panel", flag, BREAKER),
  may("groupedInPanel", "Held together with its shared neutral", flag, BREAKER),
  may("loadW", "Load", number("W", 0, 50_000), USER),
  may("loadOhm", "Resistance", number("Ω", 0.1, 10_000_000), USER),
  may("leakMa", "Leak to ground", number("mA", 0, 1_000), USER),
  may("continuous", "Continuous load", flag, USER),
  may("priority", "Must not go dark", priority, USER),
  may("weightLb", "Weight", number("lb", 0, 500), USER),
  may("heldByBuilding", "Held by the building, not by its box", flag, USER),
  may("supplyC", "Supply temperature it is marked for", number("°C", 40, 250), USER),
  may("notes", "Notes", prose),
];
